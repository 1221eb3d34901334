import type { Work } from '../../tasks/work.ts';
import type { Doubt } from './doubt.ts';
import type { DoubtEvent } from './events.ts';

const practice = 'common practice, no source';
const additions = 'US Army TM 5-5420-212-10-1, table 3-36';

/** What a leader starts from: own minutes, day, crews, events and light on; the rest stated, ready to be switched on. */
export function usualDoubt(work: Work): Doubt {
  return {
    format: 'spanwright-doubt',
    version: 1,
    own: true,
    day: { on: true, sigma: 0.12, source: practice },
    crews: { on: true, sigma: 0.12, source: practice },
    events: usualEvents(work),
    // By night over by day in that table: 1.50, 1.45 and 1.50. It has no figure for work lights.
    light: {
      on: true,
      factor: 1.5,
      lights: false,
      lit: 1.15,
      source: `${additions}; with work lights: ${practice}`,
    },
    weather: { on: false, factor: 1.3, source: additions },
    training: { on: false, factor: 1.2, source: additions },
    site: { on: false, factor: 1.3, source: additions },
    dress: { on: false, factor: 1.5, source: practice },
    heat: {
      on: false,
      wbgt: 20,
      effort: 'hard',
      dress: 'plain',
      source: 'work and rest after TB MED 507',
    },
    learning: { on: false, rate: 0.95, source: practice },
  };
}

function usualEvents(work: Work): DoubtEvent[] {
  const doing = (kinds: readonly string[]) =>
    work.tasks.filter(({ effect }) => effect && kinds.includes(effect.kind)).map(({ id }) => id);
  const events: DoubtEvent[] = [
    {
      id: 'late-truck',
      name: 'a truck is late',
      kind: 'late-load',
      on: true,
      chance: 0.15,
      delay: { quick: 5, likely: 12, slow: 40 },
      loads: work.loads.map(({ id }) => id),
      source: practice,
    },
    {
      id: 'pin-jam',
      name: 'a pin jams',
      kind: 'jam',
      on: true,
      chance: 0.03,
      delay: { quick: 2, likely: 4, slow: 12 },
      tasks: doing(['bay', 'nose']),
      source: practice,
    },
    {
      id: 'hold-fails',
      name: 'a hold fails and its redo list comes back',
      kind: 'hold-fails',
      on: true,
      chance: 0.05,
      tasks: work.tasks.filter(({ hold }) => hold).map(({ id }) => id),
      source: practice,
    },
  ];
  return events.filter((event) =>
    event.kind === 'late-load' ? event.loads.length > 0 : event.tasks.length > 0,
  );
}

/** The same doubt with everything off but the tasks' own minutes. */
export function plainDoubt(doubt: Doubt): Doubt {
  const off = <Part extends { readonly on: boolean }>(part: Part) => ({ ...part, on: false });
  return {
    ...doubt,
    own: true,
    day: off(doubt.day),
    crews: off(doubt.crews),
    events: doubt.events.map(off),
    light: off(doubt.light),
    weather: off(doubt.weather),
    training: off(doubt.training),
    site: off(doubt.site),
    dress: off(doubt.dress),
    heat: off(doubt.heat),
    learning: off(doubt.learning),
  };
}
