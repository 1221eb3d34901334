import type { Doubt } from './doubt.ts';
import type { DoubtEvent } from './events.ts';

/** One source of doubt beside the conditions, on or off, for the sheet. */
export type SourceOfDoubt = {
  readonly kind: 'own' | 'day' | 'crews' | 'event' | 'learning';
  /** Of an event, its id in the doubt. */
  readonly event?: string;
  readonly name: string;
  readonly on: boolean;
  /** In plain words: what is assumed. */
  readonly words: string;
  /** Where the figures come from. */
  readonly source: string;
};

/** Every source of doubt, used or not, in the order in which a sheet lists them. */
export function sourcesOfDoubt({ own, day, crews, events, learning }: Doubt): SourceOfDoubt[] {
  return [
    {
      kind: 'own',
      name: 'the tasks’ own minutes',
      on: own,
      words: 'quick, likely and slow of each task',
      source: 'the order of work',
    },
    {
      kind: 'day',
      name: 'the day',
      on: day.on,
      words: `everybody together: two days in three within ${within(day.sigma)} of the usual pace`,
      source: day.source,
    },
    {
      kind: 'crews',
      name: 'each crew',
      on: crews.on,
      words: `all tasks of a crew together: two crews in three within ${within(crews.sigma)} of the usual pace`,
      source: crews.source,
    },
    ...events.map(
      (event): SourceOfDoubt => ({
        kind: 'event',
        event: event.id,
        name: event.name,
        on: event.on,
        words: eventWords(event),
        source: event.source,
      }),
    ),
    {
      kind: 'learning',
      name: 'practice',
      on: learning.on,
      words: `crews get faster bay after bay: at each doubling ${percent(learning.rate)} of the minutes`,
      source: learning.source,
    },
  ];
}

/** One deviation of a log-normal factor, as a share of its median. */
function within(sigma: number): string {
  return percent(Math.expm1(sigma));
}

function eventWords(event: DoubtEvent): string {
  const of = event.kind === 'late-load' ? event.loads.length : event.tasks.length;
  const thing = event.kind === 'late-load' ? 'load' : event.kind === 'jam' ? 'task' : 'hold';
  const chance = `${percent(event.chance)} for each of ${of} ${of === 1 ? thing : `${thing}s`}`;
  if (event.kind === 'hold-fails') return `${chance}; then its redo list and the hold once more`;
  const { quick, likely, slow } = event.delay;
  return `${chance}; then ${quick} to ${slow} min, likely ${likely}`;
}

function percent(share: number): string {
  return `${Math.round(share * 1000) / 10} %`;
}
