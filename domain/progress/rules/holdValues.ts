import { type Refusal, type RefusalCode, refusal } from '../../refusal.ts';
import { bad, good, type Result } from '../../result.ts';
import type { Hold, Measure } from '../../tasks/hold.ts';
import { faultInWords, measuresThat } from '../../tasks/measured.ts';
import type { Command, Concession } from '../command.ts';
import type { Consequence } from '../entry.ts';
import type { BuildState } from '../state.ts';
import { inWords, plainName } from '../words.ts';

type Pass = Extract<Command, { kind: 'pass-hold' }>;

/**
 * Whether the values read at a hold let it pass. Each has to be given, and a thing that is not so has to be put right.
 * A number outside a hard limit passes only by the concession of a named higher authority; one outside the range where
 * it ought to lie only with the inspector's reason. What passed so is named in the consequence.
 */
export function judgeValues(
  state: BuildState,
  { measures }: Hold,
  command: Pass,
): Result<Consequence, Refusal> {
  const { values, concession, reason } = command.body;
  const inFull = (some: readonly Measure[]) =>
    some.map((measure) => faultInWords(measure, values[measure.key])).join('; ');

  const missing = measuresThat(measures, values, 'missing');
  if (missing.length > 0)
    return no('values-missing', `Enter ${inWords(missing.map(({ name }) => name))}.`, missing);

  const notSo = measuresThat(measures, values, 'no');
  const beyond = measuresThat(measures, values, 'beyond');
  if (notSo.length > 0 || (beyond.length > 0 && !concession)) {
    const stopped = measuresThat(measures, values, 'no', 'beyond');
    const ways =
      notSo.length > 0
        ? 'Put it right and measure again, or fail the hold.'
        : 'Put it right and measure again, fail the hold, or enter the concession of a named higher authority.';
    return no('value-outside-limit', `This hold cannot pass: ${inFull(stopped)}. ${ways}`, stopped);
  }
  const wrong = concession ? refuseConcession(state, command, concession, beyond) : null;
  if (wrong) return bad(wrong);

  const outside = measuresThat(measures, values, 'outside');
  if (outside.length > 0 && !reason?.trim()) {
    const sentence = `It passes only with your reason: ${inFull(outside)}. Say why it may stand, or put it right.`;
    return no('reason-missing', sentence, outside);
  }
  return good({
    ...(beyond.length > 0 ? { beyond: keysOf(beyond) } : {}),
    ...(outside.length > 0 ? { outside: keysOf(outside) } : {}),
  });
}

/** A limit has no override on site: whoever concedes is named in full, and is nobody who inspects or builds here. */
function refuseConcession(
  state: BuildState,
  { body, by }: Pass,
  { name, authority, reason }: Concession,
  beyond: readonly Measure[],
): Refusal | null {
  if (beyond.length === 0) {
    const sentence = 'Every value is inside its limit: pass it without a concession.';
    return refusal('concession-not-needed', sentence, ['concession']);
  }
  const blank = Object.entries({ name, authority, reason }).filter(([, text]) => !text.trim());
  if (blank.length > 0) {
    const sentence = `A concession wants ${inWords(blank.map(([field]) => wanted[field] ?? field))}: ask the higher authority again.`;
    const fields = blank.map(([field]) => `concession/${field}`);
    return refusal('concession-incomplete', sentence, fields);
  }
  const chiefs = state.work.crews.flatMap(({ chief }) => (chief ? [chief] : []));
  const onSite = new Set([body.name, by.name, ...chiefs].map(plainName));
  if (!onSite.has(plainName(name))) return null;
  const sentence = `${name.trim()} is on site and cannot set a limit of the kit aside: ask a higher authority, and enter who that is.`;
  return refusal('concession-not-higher', sentence, ['concession/name']);
}

const wanted: Readonly<Record<string, string>> = {
  name: 'the name of who gives it',
  authority: 'the post or office',
  reason: 'the reason',
};

function keysOf(measures: readonly Measure[]): string[] {
  return measures.map(({ key }) => key);
}

function no(
  code: RefusalCode,
  sentence: string,
  measures: readonly Measure[],
): Result<never, Refusal> {
  return bad(refusal(code, sentence, keysOf(measures)));
}
