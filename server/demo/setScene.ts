import type { CommandBody } from '#domain/progress/command.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Planner } from '../workers/planner.ts';
import { type FirstPlan, firstPlan, workWhenOpened } from './firstPlan.ts';
import { missingLoads, type When } from './larchFord.ts';
import { playTimes } from './playTimes.ts';

/** The scene: this task has been at work for so many minutes. Move 4 is done then and bay 9 going on. */
const sceneTask = 'bay-9-left';
const minutesIntoScene = 2;

/** So many minutes the late load is after its time. */
const lateInScene = 12;

/**
 * Whoever asks for a bridge by a time knows that the night is slow: as many times the planned minutes as a build by day is
 * given, on full five minutes of the clock.
 */
const askedOverPlanned = 1.21;

/** Whatever the light, the scene comes sooner. Minutes. */
const longest = 24 * 60;

/** Two or three do nearly always. */
const mostPlans = 6;

/** The demo build as it must have begun to stand at the scene now. */
type Scene = FirstPlan & { readonly opening: CommandBody<'open-build'> };

/**
 * Finds the start, to the second, from which the build as it is played stands at the scene at `now`. By night all takes
 * longer and the start lies further back; but the plan depends on the light from its start on. So a plan is made, the
 * start found that brings its play to the scene, and for that start again a plan near it, until both agree.
 */
export async function setScene(
  planner: Pick<Planner, 'plan'>,
  openFor: (when: When) => CommandBody<'open-build'>,
  now: Date,
): Promise<Scene> {
  // The first guess is a plan for all light, the same at any hour.
  let { plan } = await firstPlan(planner, { ...openFor({ start: now }), ground: null }, null);
  let when = startOf(plan, openFor, now);
  for (let plans = 1; ; plans += 1) {
    const opening = openFor(when);
    const first = await firstPlan(planner, opening, plan);
    plan = first.plan;
    const next = startOf(plan, openFor, now);
    const agree = next.start.getTime() === when.start.getTime();
    if (agree || plans === mostPlans) {
      return { opening: openFor({ ...when, askedAfter: askedAfter(when.start, plan) }), ...first };
    }
    when = next;
  }
}

/** Minutes after the start. */
function askedAfter(start: Date, { minutesToOpen }: Plan): number {
  const begun = start.getTime() / 60_000;
  return 5 * Math.ceil((begun + askedOverPlanned * minutesToOpen) / 5) - begun;
}

/** When a build by this plan began whose scene is now, to the second. */
function startOf(plan: Plan, openFor: (when: When) => CommandBody<'open-build'>, now: Date): When {
  const present = Math.floor(now.getTime() / 1000);
  const startAt = (second: number) => new Date(second * 1000);
  const sceneFrom = (second: number) => {
    const work = workWhenOpened(openFor({ start: startAt(second) }));
    const scene = playTimes(work, plan, missingLoads).find(({ task }) => task === sceneTask);
    if (!scene) throw new Error(`demo: the story never comes to ${sceneTask}`);
    return second + 60 * (scene.start + minutesIntoScene);
  };
  // A later start never comes to the scene earlier.
  let last = present;
  let before = last - 60 * longest;
  while (last - before > 1) {
    const middle = Math.floor((before + last) / 2);
    if (sceneFrom(middle) <= present) before = middle;
    else last = middle;
  }
  return { start: startAt(before), lateLoadDue: (present - before) / 60 - lateInScene };
}
