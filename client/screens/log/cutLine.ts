import { TZDate } from '@date-fns/tz';

/** A typed line, taken apart: its words, when it was said to have happened, and who said it. */
export type CutLine = {
  /** As typed, without commas and colons at their ends. */
  readonly tokens: readonly string[];
  /** Milliseconds since 1970; null when no time was typed. */
  readonly at: number | null;
  /** After ", by"; null when nobody was named. */
  readonly by: string | null;
};

const dayLong = 86_400_000;
/** A watch on site may run ahead of this one by so much: that is now, not yesterday. */
const watchesDiffer = 10 * 60_000;

/**
 * Takes a line apart. A time is `13:47`, `1347` (where it cannot be a count: last, or after "at") or `5 ago`; it is the
 * last such time at the site before `now`. Who said it stands at the end, after a comma: `, by Okoro`.
 */
export function cutLine(line: string, now: number, zone: string): CutLine {
  const named = /^(.*?)[,;]\s*by\s+([^,;]+?)\s*$/i.exec(line);
  let tokens = tokensOf(named?.[1] ?? line);
  let by = named?.[2] ?? null;
  let at: number | null = null;

  // A time may also stand after the name: "left 57 done, by Okoro 1347".
  const byWords = by?.split(/\s+/) ?? [];
  const lateTime = byWords.length > 1 ? timeAt(byWords.at(-1)!, now, zone) : null;
  if (lateTime !== null) {
    at = lateTime;
    by = byWords.slice(0, -1).join(' ');
  }
  const spot = at === null ? findTime(tokens, now, zone) : null;
  if (spot) {
    at = spot.at;
    tokens = tokens.filter((_, index) => index < spot.from || index > spot.to);
  }
  return { tokens, at, by };
}

function tokensOf(line: string): string[] {
  return line
    .split(/\s+/)
    .map((token) => token.replace(/[,;:]+$/, ''))
    .filter((token) => token !== '');
}

type Spot = { readonly from: number; readonly to: number; readonly at: number };

function findTime(tokens: readonly string[], now: number, zone: string): Spot | null {
  for (const [index, token] of tokens.entries()) {
    const after = tokens[index - 1]?.toLowerCase() === 'at';
    const last = index === tokens.length - 1 && index > 0;
    if (token.includes(':') || ((after || last) && /^\d{4}$/.test(token))) {
      const at = timeAt(token, now, zone);
      if (at !== null) return { from: after ? index - 1 : index, to: index, at };
    }
    if (token.toLowerCase() !== 'ago') continue;
    const unit = tokens[index - 1]?.toLowerCase() === 'min' ? 1 : 0;
    const count = tokens[index - 1 - unit] ?? '';
    if (/^\d{1,3}$/.test(count)) {
      return { from: index - 1 - unit, to: index, at: now - Number(count) * 60_000 };
    }
  }
  return null;
}

/** "13:47" or "1347" at the site, the last one before now; null when it is no time. */
function timeAt(token: string, now: number, zone: string): number | null {
  const [, hours, minutes] =
    /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(token) ?? /^([01]\d|2[0-3])([0-5]\d)$/.exec(token) ?? [];
  if (hours === undefined || minutes === undefined) return null;
  const there = new TZDate(now, zone);
  const said = new TZDate(
    there.getFullYear(),
    there.getMonth(),
    there.getDate(),
    Number(hours),
    Number(minutes),
    zone,
  ).getTime();
  if (said <= now) return said;
  return said - now <= watchesDiffer ? now : said - dayLong;
}
