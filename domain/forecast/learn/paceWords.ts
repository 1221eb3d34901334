import type { Crew } from '../../tasks/work.ts';
import { loading, type Pace, projected } from './pace.ts';

/** How fast one crew is, day and crew together, against what is planned for these conditions. For the leader alone. */
export type CrewPace = {
  readonly crew: string;
  /** Middle of what is believed: above 1 is slow. */
  readonly factor: number;
  /** Between these it lies with four chances in five. */
  readonly from: number;
  readonly to: number;
  /** "6 min for each 5 planned". */
  readonly words: string;
};

/** z below which a normal curve has nine tenths: four in five lie within this many deviations. */
const nineTenths = 1.2816;

/** The pace of each crew in plain words, in the order of `crews`. */
export function crewPaces(pace: Pace, crews: readonly Crew[]): CrewPace[] {
  return crews
    .filter(({ id }) => pace.crews.includes(id))
    .map(({ id }) => {
      const { mean, variance } = projected(pace, loading(pace, [id]));
      const reach = nineTenths * Math.sqrt(Math.max(0, variance));
      return {
        crew: id,
        factor: Math.exp(mean),
        from: Math.exp(mean - reach),
        to: Math.exp(mean + reach),
        words: paceWords(Math.exp(mean)),
      };
    });
}

/** Minutes planned that a pace is told for: five or, where whole minutes for each five would be far off, ten. */
export function paceBase(factor: number): 5 | 10 {
  const five = Math.round(factor * 5);
  return Math.abs(five - factor * 5) <= 0.25 && five > 0 ? 5 : 10;
}

/** A factor as whole minutes for each five planned or, where that would be far off, for each ten. */
export function paceWords(factor: number): string {
  const planned = paceBase(factor);
  const took = Math.round(factor * planned);
  return took === planned ? 'as planned' : `${took} min for each ${planned} planned`;
}
