import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import type { DoubtEvent } from '#domain/forecast/doubt/events.ts';
import type { Minutes } from '#domain/tasks/task.ts';
import { words } from '../../words/words.ts';
import { type DoubtPart, withEvent } from './doubtDraft.ts';

/** One number of a source of doubt, as a person writes it. */
export type Figure = {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** The doubt with another value, said to be the leader's own. */
  readonly set: (value: number) => Doubt;
};

/** The numbers of one source, to be changed; none where there is only a switch. */
export function figuresOf(doubt: Doubt, of: DoubtPart): Figure[] {
  const said = words.forecast.doubt.fields;
  const source = words.forecast.doubt.own;
  switch (of.part) {
    case 'own':
      return [];
    case 'event':
      return eventFigures(doubt, of.id);
    case 'day':
    case 'crews': {
      const part = of.part;
      return [
        {
          name: 'sigma',
          label: said.spread,
          hint: said.spreadHint,
          from: 0,
          to: 1,
          value: doubt[part].sigma,
          set: (sigma) => ({ ...doubt, [part]: { ...doubt[part], sigma, source } }),
        },
      ];
    }
    case 'learning':
      return [
        {
          name: 'rate',
          label: said.rate,
          from: 0.5,
          to: 1,
          value: doubt.learning.rate,
          set: (rate) => ({ ...doubt, learning: { ...doubt.learning, rate, source } }),
        },
      ];
    case 'light':
      return [
        {
          name: 'factor',
          label: said.dark,
          from: 1,
          to: 10,
          value: doubt.light.factor,
          set: (factor) => ({ ...doubt, light: { ...doubt.light, factor, source } }),
        },
        {
          name: 'lit',
          label: said.lit,
          from: 1,
          to: 10,
          value: doubt.light.lit,
          set: (lit) => ({ ...doubt, light: { ...doubt.light, lit, source } }),
        },
      ];
    case 'heat':
      return [
        {
          name: 'wbgt',
          label: said.wbgt,
          from: -30,
          to: 60,
          value: doubt.heat.wbgt,
          // The table stays the source of the rests: only the temperature is the leader's.
          set: (wbgt) => ({ ...doubt, heat: { ...doubt.heat, wbgt } }),
        },
      ];
    default: {
      const part = of.part;
      return [
        {
          name: 'factor',
          label: said.factor,
          from: 0.2,
          to: 10,
          value: doubt[part].factor,
          set: (factor) => ({ ...doubt, [part]: { ...doubt[part], factor, source } }),
        },
      ];
    }
  }
}

function eventFigures(doubt: Doubt, id: string): Figure[] {
  const event = doubt.events.find((one) => one.id === id);
  if (!event) return [];
  const said = words.forecast.doubt.fields;
  const source = words.forecast.doubt.own;
  const chance: Figure = {
    name: 'chance',
    label: said.chance,
    from: 0,
    to: 100,
    value: Math.round(event.chance * 1000) / 10,
    set: (value) => withEvent(doubt, id, (was) => ({ ...was, chance: value / 100, source })),
  };
  if (event.kind === 'hold-fails') return [chance];
  const delays = (['quick', 'likely', 'slow'] as const).map(
    (point): Figure => ({
      name: point,
      label: said[point],
      from: 0,
      to: 1440,
      value: event.delay[point],
      set: (value) => withEvent(doubt, id, (was) => withDelay(was, point, value)),
    }),
  );
  return [chance, ...delays];
}

/** Quick, likely and slow never cross: the others give way. */
function withDelay(event: DoubtEvent, point: keyof Minutes, value: number): DoubtEvent {
  if (event.kind === 'hold-fails') return event;
  const order = ['quick', 'likely', 'slow'] as const;
  const at = order.indexOf(point);
  const delay = { ...event.delay, [point]: value };
  for (const [place, other] of order.entries()) {
    if (place < at) delay[other] = Math.min(delay[other], value);
    if (place > at) delay[other] = Math.max(delay[other], value);
  }
  return { ...event, delay, source: words.forecast.doubt.own };
}
