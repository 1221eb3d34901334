import fc from 'fast-check';
import type { Author, Command, CommandBody, CommandKind } from '#domain/progress/command.ts';
import type { Entry } from '#domain/progress/entry.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Refusal } from '#domain/refusal.ts';
import { command, dale, hill, inspector, leader, log, type Site, site } from './site.ts';

// What people on the small site may send, in any order, sensible or not.

/** What is sent, given the state it meets. Several commands make up a step that gets the work on. */
export type Step = (given: Site, at: number) => readonly Command[];

/** What became of one command. */
export type Met = {
  readonly sent: Command;
  readonly before: BuildState;
  readonly after: BuildState;
  readonly entry: Entry | null;
  readonly refused: Refusal | null;
};

const crews = ['left', 'right'] as const;
const tasks = ['pegs', 'panel-left', 'panel-right', 'lift', 'move', 'deck', 'unload'] as const;
const anyCrew = fc.constantFrom(...crews);
const anyTask = fc.constantFrom(...tasks);
const anyHold = fc.constantFrom('check', 'open');
const anyAuthor = fc.constantFrom<Author>(leader, log, hill, dale, inspector);

function chiefOf(crew: string): Author {
  return crew === 'left' ? hill : dale;
}

function one<Kind extends CommandKind>(kind: Kind, body: CommandBody<Kind>, by: Author): Step {
  return (_given, at) => [command(kind, body, { by, at })];
}

const workKinds = ['tell-started', 'tell-finished', 'tell-resumed'] as const;

/** A tell about work at one task, by the crew's chief, the log keeper or the leader. */
export const workStep = fc
  .record({
    kind: fc.constantFrom(...workKinds, 'tell-stopped', 'tell-part'),
    task: anyTask,
    crew: anyCrew,
    by: fc.constantFrom('chief', 'log', 'leader'),
    part: fc.constantFrom(0.25, 0.5),
    late: fc.constantFrom(0, 0, 0, 3),
  })
  .map(({ kind, task, crew, by, part, late }): Step => {
    const author = { chief: chiefOf(crew), log, leader }[by]!;
    const more = kind === 'tell-stopped' ? { why: 'rain' } : kind === 'tell-part' ? { part } : {};
    return (_given, at) => [
      command(kind, { task, crew, ...more } as never, {
        by: author,
        at: Math.max(0, at - late),
        received: at,
      }),
    ];
  });

const clearanceStep = fc
  .record({
    crew: anyCrew,
    off: fc.integer({ min: 0, max: 8 }),
    bank: fc.constantFrom('near', 'far'),
  })
  .chain(({ crew, off, bank }) =>
    fc.constantFrom<Step>(
      one('tell-off', { task: 'move', crew, off, of: Math.max(off, 7) }, chiefOf(crew)),
      one('tell-clear', { task: 'move', bank: bank as 'near', name: 'Cpl Ash', people: 5 }, log),
    ),
  );

const inspectionStep = fc
  .record({ task: anyHold, level: fc.constantFrom(2, 9), pass: fc.boolean(), by: anyAuthor })
  .map(({ task, level, pass, by }): Step => {
    const values = { level, pins: true, wind: 4 };
    return pass
      ? one('pass-hold', { task, name: by.name, values, remark: '' }, by)
      : one('fail-hold', { task, name: by.name, values, why: 'low' }, by);
  });

const haltStep = fc.oneof(
  fc.constant(one('halt', { why: 'rope' }, dale)),
  fc.constant(one('lift-halt', { name: leader.name }, leader)),
  anyCrew.map((crew) => one('acknowledge-halt', { crew, people: 7, of: 7 }, chiefOf(crew))),
);

const siteStep = fc.oneof(
  fc
    .record({ crew: anyCrew, fit: fc.integer({ min: 0, max: 9 }) })
    .map(({ crew, fit }) => one('tell-strength', { crew, fit }, chiefOf(crew))),
  anyCrew.map((crew) => one('tell-hurt', { crew, what: 'hand', outOfWork: true }, chiefOf(crew))),
  fc.constantFrom(3, 10, 14).map((speed) => one('tell-wind', { speed }, log)),
  anyCrew.map((crew) => one('tell-relief', { crew }, chiefOf(crew))),
  fc.constant(one('tell-near-miss', { what: 'panel slipped' }, hill)),
  fc.constant(one('tell-load-late', { load: 'truck', minutes: 8, why: 'tyre' }, log)),
  fc.constant(one('tell-load-in', { load: 'truck' }, log)),
);

const leaderStep = fc.oneof(
  anyTask.map((task) => one('reopen-task', { task, why: 'pin missing', also: [] }, leader)),
  fc
    .record({ task: anyTask, status: fc.constantFrom('done' as const, 'stopped' as const) })
    .map((body) => one('settle-task', body, leader)),
);

const withdrawalStep = fc.record({ back: fc.integer({ min: 0, max: 12 }), by: anyAuthor }).map(
  ({ back, by }): Step =>
    (given, at) => {
      const entry = Math.max(1, given.state.number - back);
      return [command('withdraw', { entry, why: 'mistake' }, { by, at })];
    },
);

const keepOffStep = fc
  .constantFrom(leader, log, hill, dale)
  .map((by) => one('start-keep-off', { task: 'move' }, by));

/** What a good crew would do next, so that the sequences get as far as the move and beyond. */
const onwards: Step = (given, at) => {
  const { state } = given;
  const next = state.work.tasks.find(({ id }) => state.tasks[id]?.status !== 'done');
  if (!next) return [];
  const task = next.id;
  if (next.hold) {
    const values = { level: 2, pins: true, wind: 4 };
    return [
      command(
        'pass-hold',
        { task, name: inspector.name, values, remark: '' },
        { by: inspector, at },
      ),
    ];
  }
  const named = next.needs.flatMap(({ anyOf }) => anyOf);
  const done = named.map((crew) =>
    command('tell-finished', { task, crew }, { by: chiefOf(crew), at }),
  );
  if (!next.keepOff) return done;
  if (state.tasks[task]?.status === 'at-work') return done;
  const off = crews.map((crew) => {
    const fit = state.crews[crew]!.fit;
    return command('tell-off', { task, crew, off: fit, of: fit }, { by: chiefOf(crew), at });
  });
  const clear = (['near', 'far'] as const).map((bank) =>
    command('tell-clear', { task, bank, name: 'Cpl Ash', people: 5 }, { by: log, at }),
  );
  return [...off, ...clear, command('start-keep-off', { task }, { by: leader, at })];
};

export const anyStep: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: workStep },
  { weight: 8, arbitrary: fc.constant(onwards) },
  { weight: 2, arbitrary: clearanceStep },
  { weight: 2, arbitrary: inspectionStep },
  { weight: 1, arbitrary: haltStep },
  { weight: 2, arbitrary: siteStep },
  { weight: 1, arbitrary: leaderStep },
  { weight: 2, arbitrary: withdrawalStep },
  { weight: 2, arbitrary: keepOffStep },
);

/** Steps on a site where the work has got on a little undisturbed. */
export const anySteps: fc.Arbitrary<readonly Step[]> = fc
  .tuple(fc.integer({ min: 0, max: 7 }), fc.array(anyStep, { maxLength: 30, size: 'large' }))
  .map(([undisturbed, steps]) => [...Array<Step>(undisturbed).fill(onwards), ...steps]);

/** Plays steps on the site, one minute apart, whatever comes of them. */
export function play(steps: readonly Step[]): { readonly given: Site; readonly met: Met[] } {
  const given = site();
  const met: Met[] = [];
  for (const [index, step] of steps.entries()) met.push(...meet(given, step, index + 1));
  return { given, met };
}

/** Plays one more step. */
export function meet(given: Site, step: Step, at: number): Met[] {
  return step(given, at).map((sent) => {
    const before = given.state;
    const refused = given.try(sent);
    const entry = refused ? null : given.entries.at(-1)!;
    return { sent, before, after: given.state, entry, refused };
  });
}
