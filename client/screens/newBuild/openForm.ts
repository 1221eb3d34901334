import type { BuildSource, OpenRequest } from '#shared/wireBuilds.ts';
import { readSiteTime } from '../../parts/siteTime.ts';
import { clock, millisecondsOf } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** The form as typed, but for what the build starts from. */
export type TypedBuild = {
  readonly name: string;
  readonly unit: string;
  readonly zone: string;
  readonly start: string;
  readonly asked: string;
  readonly confidence: number;
};

export type BuildFaults = Partial<Record<'name' | 'zone' | 'start' | 'asked', string>>;

/** Whether the language knows a time zone of that name. */
export function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

/** What is wrong with the form, by field, seen from `now` (milliseconds). */
export function buildFaults(typed: TypedBuild, now: number): BuildFaults {
  const said = words.newBuild;
  if (!isZone(typed.zone)) {
    return { ...(typed.name.trim() === '' && { name: said.nameFault }), zone: said.zoneFault };
  }
  const { start, asked } = times(typed, now);
  const early = start !== null && asked !== null && asked <= start;
  const unread = typed.asked.trim() !== '' && asked === null;
  return {
    ...(typed.name.trim() === '' && { name: said.nameFault }),
    ...(start === null && { start: said.startFault }),
    ...((early || unread) && { asked: said.askedFault }),
  };
}

/** The request that a form without faults makes; null where it has some. */
export function openRequest(
  typed: TypedBuild,
  source: BuildSource,
  id: string,
  now: number,
): OpenRequest | null {
  if (Object.keys(buildFaults(typed, now)).length > 0) return null;
  const { start, asked } = times(typed, now);
  if (start === null) return null;
  const { name, unit, zone, confidence } = typed;
  return {
    id,
    name: name.trim(),
    unit: unit.trim(),
    start,
    askedFor: asked,
    zone,
    confidence,
    source,
  };
}

/** What a new form begins with: work starts at the next quarter of an hour that leaves time to fill the form in. */
export function emptyBuild(zone: string, now: number): TypedBuild {
  const start = Math.ceil(now / quarter + 1) * quarter;
  return { name: '', unit: '', zone, start: clock(start, zone), asked: '', confidence: 0.9 };
}

const quarter = 15 * 60_000;

/** The start that is typed, ISO 8601 UTC; null while it is none. */
export function startOf(typed: TypedBuild, now: number): string | null {
  return isZone(typed.zone) ? times(typed, now).start : null;
}

/** A start typed as a time of day is the next such time, or one that has just passed; the opening comes after it. */
function times({ start: startText, asked: askedText, zone }: TypedBuild, now: number) {
  const justPassed = now - 60 * 60_000;
  const start = readSiteTime(startText, zone, justPassed);
  const from = start === null ? now : millisecondsOf(start);
  return { start, asked: askedText.trim() === '' ? null : readSiteTime(askedText, zone, from) };
}
