import type { Author, Command, CommandBody, CommandKind } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import type { Hold, Measure } from '#domain/tasks/hold.ts';
import { playTimes } from './playTimes.ts';
import type { Story } from './story.ts';

const leaderLink: Author = { role: 'leader', name: 'Leader' };

/** A value an inspector could have read: as it was reckoned, else where it ought to lie, towards the good end. */
function goodValue(measure: Measure): number | boolean {
  if (measure.unit === 'yes') return true;
  if (measure.reckoned !== undefined) return measure.reckoned;
  const { least, most } = { ...measure, ...measure.soft };
  if (least !== undefined && most !== undefined) return Math.round(((least + most) / 2) * 10) / 10;
  if (most !== undefined) return Math.round(most * 3) / 10;
  return least ?? 0;
}

function goodValues(hold: Hold): Record<string, number | boolean> {
  return Object.fromEntries(hold.measures.map((measure) => [measure.key, goodValue(measure)]));
}

/**
 * The commands that the people of the story sent up to `until` (minutes after the start), in order.
 * Each went through `decide`, so the record they leave is one that could have happened.
 * Throws when the story breaks a rule: that is a fault of the story, not of a user.
 */
export function playBuild(story: Story, until: number, mintId: () => string): Command[] {
  const start = Date.parse(story.opening.start);
  const second = (minutes: number) => Math.round(minutes * 60);
  const at = (minutes: number) => new Date(start + second(minutes) * 1000).toISOString();
  const commands: Command[] = [];
  let state: BuildState = emptyBuild;
  let number = 0;

  function send<Kind extends CommandKind>(
    kind: Kind,
    body: CommandBody<Kind>,
    by: Author,
    minutes: number,
  ): void {
    const command = {
      id: mintId(),
      kind,
      body,
      by,
      happenedAt: at(minutes),
      receivedAt: at(minutes),
    } as Command;
    const decision = decide(state, command);
    if (!decision.ok)
      throw new Error(`demo story: ${kind} at ${minutes}: ${decision.reason.sentence}`);
    for (const entry of decision.value) {
      number += 1;
      state = evolve(state, { ...entry, number });
    }
    commands.push(command);
  }

  const chiefOf = (crew: string): Author => ({
    role: 'chief',
    crew,
    name: story.opening.work.crews.find(({ id }) => id === crew)?.chief ?? 'Chief',
  });
  const crewsOf = (task: string) =>
    story.plan.tasks.find((planned) => planned.task === task)?.crews ?? [];

  /** Head counts and "seen clear", as the list of unmet conditions asks for them. */
  function clearFor(task: string, minutes: number): void {
    const own = crewsOf(task);
    for (const { kind, of } of keepOffCheck(state, task).filter(({ met }) => !met)) {
      if (kind === 'off') {
        const fit = state.crews[of]?.fit ?? 0;
        const inTask = own.find((share) => share.crew === of)?.people ?? 0;
        const body = { task, crew: of, off: Math.max(0, fit - inTask), of: fit };
        send('tell-off', body, chiefOf(of), minutes);
      } else if (kind === 'clear') {
        const bank = of as 'near' | 'far';
        send('tell-clear', { task, bank, ...story.lookouts[bank] }, leaderLink, minutes);
      }
    }
  }

  send('open-build', story.opening, leaderLink, -45);
  send(
    'accept-plan',
    { work: story.work, plan: story.plan, basis: number, gain: 'first plan' },
    leaderLink,
    -30,
  );

  type Moment = { readonly minutes: number; readonly act: () => void };
  const moments: Moment[] = story.asides.map((aside) => ({
    minutes: aside.minutes,
    act: () =>
      send(
        aside.kind,
        aside.body as never,
        aside.crew ? chiefOf(aside.crew) : leaderLink,
        aside.minutes,
      ),
  }));
  for (const load of story.opening.work.loads)
    if (!story.missing.has(load.id))
      moments.push({
        minutes: load.arrives,
        act: () => send('tell-load-in', { load: load.id }, chiefOf(story.storesCrew), load.arrives),
      });
  const tasks = new Map(story.work.tasks.map((task) => [task.id, task]));
  for (const run of playTimes(story.work, story.plan, story.missing)) {
    const { start: begins, finish } = run;
    const task = tasks.get(run.task)!;
    const crews = crewsOf(task.id).map(({ crew }) => crew);
    moments.push({
      minutes: begins,
      act: () => {
        if (task.keepOff) {
          clearFor(task.id, begins);
          send('start-keep-off', { task: task.id }, leaderLink, begins);
        } else
          for (const crew of crews)
            send('tell-started', { task: task.id, crew }, chiefOf(crew), begins);
      },
    });
    moments.push({
      minutes: finish,
      act: () => {
        if (task.hold)
          send(
            'pass-hold',
            { task: task.id, name: story.inspector, values: goodValues(task.hold), remark: '' },
            { role: 'inspector', name: story.inspector },
            finish,
          );
        else
          for (const crew of crews)
            send('tell-finished', { task: task.id, crew }, chiefOf(crew), finish);
      },
    });
  }
  // At one moment finishes come first: they were pushed after their own starts but free the next ones.
  moments.sort((a, b) => second(a.minutes) - second(b.minutes));
  for (const { minutes, act } of moments) if (minutes <= until) act();
  return commands;
}
