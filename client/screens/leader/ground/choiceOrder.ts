import type { Choice } from '#domain/bridge/choices.ts';
import type { ChoiceTimes } from '#domain/bridge/choiceTimes.ts';
import { minutes, tonnes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { keyOf } from './useChoiceTimes.ts';

/** A bridge of the choice, when it opens, and why it is wanted or not. */
export type RankedChoice = {
  readonly choice: Choice;
  /** Undefined while it is not worked out; null where it cannot be planned. */
  readonly times: ChoiceTimes | null | undefined;
  readonly wanted: boolean;
  readonly why: string;
};

/** Less than this, in minutes, is no difference to anybody. */
const same = 1;

/**
 * The bridges that fit, the wanted one first: the fastest at eight in ten once all are worked out, by the longest chain
 * before; of two alike the one with less to bring. Each with the sentence that speaks for it or rules it out.
 */
export function rankChoices(
  fitting: readonly Choice[],
  times: ReadonlyMap<string, ChoiceTimes | null>,
): RankedChoice[] {
  const timesOf = ({ bridge }: Choice) => times.get(keyOf(bridge));
  const known = fitting.every((one) => timesOf(one) !== undefined);
  const lasts = (one: Choice) =>
    known ? (timesOf(one)?.p80 ?? Number.POSITIVE_INFINITY) : one.leastMinutes;
  const sorted = fitting.toSorted((a, b) => {
    const [first, second] = [lasts(a), lasts(b)];
    if (first === second || Math.abs(first - second) < same) return a.tonnes - b.tonnes;
    return first - second;
  });
  const [best, next] = sorted;
  return sorted.map((choice) => ({
    choice,
    times: timesOf(choice),
    wanted: choice === best,
    why:
      choice === best
        ? whyWanted(choice, next, lasts)
        : best
          ? whyNot(choice, best, lasts, known)
          : '',
  }));
}

function nameOf({ bridge }: Choice): string {
  return words.choice.name(bridge.bays, bridge.nose);
}

function whyWanted(best: Choice, next: Choice | undefined, lasts: (one: Choice) => number): string {
  const said = words.choice;
  if (!next) return said.only;
  const more = lasts(next) - lasts(best);
  if (!Number.isFinite(more)) return said.fastest;
  return more < same
    ? said.alike(nameOf(next))
    : `${said.fastest} ${said.fastestBy(nameOf(next), minutes(more))}`;
}

function whyNot(one: Choice, best: Choice, lasts: (one: Choice) => number, known: boolean): string {
  const said = words.choice;
  if (!known) return `${words.choice.noTimesYet(one.against ?? '')}.`;
  const later = lasts(one) - lasts(best);
  if (!Number.isFinite(later)) return `${said.cannotPlan}.`;
  const heavier = (one.tonnes - best.tonnes) * 1000;
  const more = heavier > 50 ? said.noFasterMore(tonnes(heavier)) : '';
  return `${later < same ? said.noFaster : said.slower(minutes(later))}${more}.`;
}
