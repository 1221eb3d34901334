import type { Ground } from '#domain/bridge/ground.ts';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import type { Command } from '#domain/progress/command.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { OpenedBuild } from '#shared/wireBuilds.ts';
import { designWork } from '../kits.ts';
import { openBuild } from '../live/openBuild.ts';
import type { OpenDemo, Site } from '../site.ts';
import { larchFordOpening, larchFordStory } from './larchFord.ts';
import { playBuild } from './playBuild.ts';
import { playTimes } from './playTimes.ts';
import { tellForecasts } from './tellForecasts.ts';

type Needs = Pick<Site, 'clock' | 'ids' | 'ledger' | 'kits' | 'planner' | 'program'>;

/** The demo opens when this task has been at work for a few minutes: move 4 done, bay 9 going on. */
const sceneTask = 'bay-9-left';
const minutesIntoScene = 2;

/** Starts the demo build: fresh, to be planned from now; or half built, played up to now. */
export function demoOpener(site: Needs): OpenDemo {
  return async (how): Promise<OpenedBuild> => {
    const designed = designWork(site.kits, { ground: larchFord as Ground, kit: 'heron' });
    if (!designed.ok) throw new Error(`demo: ${designed.reason.sentence}`);
    const now = site.clock.now();
    const openAt = (start: Date) =>
      larchFordOpening({
        start,
        program: site.program,
        ground: larchFord as Ground,
        ...designed.value,
      });

    if (how === 'fresh') {
      // On the next full quarter of an hour, half an hour from now at the soonest.
      const quarter = 15 * 60_000;
      const start = new Date(Math.ceil((now.getTime() + 2 * quarter) / quarter) * quarter);
      const at = now.toISOString();
      return opened(
        await openBuild(site, {
          id: site.ids.long(),
          kind: 'open-build',
          body: openAt(start),
          by: { role: 'leader', name: 'Leader' },
          happenedAt: at,
          receivedAt: at,
        }),
      );
    }

    const plan = await planWhole(site, openAt(now).work);
    const scene = playTimes(openAt(now).work, plan, larchFordStory(openAt(now), plan).missing).find(
      ({ task }) => task.id === sceneTask,
    );
    if (!scene) throw new Error(`demo: the story never comes to ${sceneTask}`);
    const until = scene.start + minutesIntoScene;
    const start = new Date(Math.round((now.getTime() - until * 60_000) / 60_000) * 60_000);
    const [opening, ...more] = playBuild(larchFordStory(openAt(start), plan), until, site.ids.long);
    const demo = opened(
      await openBuild(site, opening as Extract<Command, { kind: 'open-build' }>, more),
    );
    await tellForecasts(site, demo.build, { start, now });
    return demo;
  };
}

async function planWhole(
  { planner }: Needs,
  work: Parameters<Site['planner']['plan']>[0]['work'],
): Promise<Plan> {
  const planned = await planner.plan({
    work,
    past: { now: 0, tasks: [] },
    doubts: { doubt: usualDoubt(work) },
    shape: 'pert',
    askedFor: null,
    runs: 100,
    seed: 1,
    inForce: null,
  });
  if (!planned.ok) throw new Error(`demo: ${planned.reason.sentence}`);
  return planned.value.plan;
}

function opened(result: Awaited<ReturnType<typeof openBuild>>): OpenedBuild {
  if (!result.ok) throw new Error(`demo: ${result.reason.sentence}`);
  return result.value;
}
