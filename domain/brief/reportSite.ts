import type { BuildState, Event } from '../progress/state.ts';
import { strengthOf } from '../progress/views/strength.ts';
import { clockTime } from './clockTime.ts';
import { lightSentence } from './light.ts';

/** Safety events said in full; older ones stand in the record. */
const saidInFull = 8;

const safetyKinds: ReadonlySet<Event['kind']> = new Set([
  'hurt',
  'near-miss',
  'breach',
  'halt',
  'hold-failed',
  'conceded',
  'reopened',
]);

/** On site, planned, fit and hurt. */
export function peopleText(state: BuildState): string {
  const { onSite, planned, fit, hurt } = strengthOf(state);
  return `${onSite} on site of ${planned} planned; ${fit} fit, ${hurt} hurt.`;
}

/** Equipment and parts told short, and loads that are late. */
export function shortText({ events, work, loads, zone }: BuildState, now: string): string {
  const short = events.filter(({ kind }) => kind === 'short').map(({ sentence }) => sentence);
  const late = work.loads.flatMap(({ id, name }) => {
    const load = loads[id];
    if (load?.status !== 'late') return [];
    const expected = `${name} late, expected ${clockTime(load.at, zone, now)}`;
    return [load.why ? `${expected}: ${load.why}` : expected];
  });
  const all = [...short, ...late].map(closed);
  return all.length > 0 ? all.join(' ') : 'Nothing.';
}

/** The light that is left where the place is known. */
export function lightText({ ground, zone }: BuildState, now: string): string {
  return ground?.place
    ? lightSentence(ground.place, now, zone)
    : 'Place not given, so no sun times.';
}

/** The last readings of water and wind. */
export function waterText({ water, wind, ground, zone }: BuildState, now: string): string {
  const rise = water.rise ?? ground?.water.rise ?? null;
  const read =
    water.at === null ? 'as measured with the ground' : `read ${clockTime(water.at, zone, now)}`;
  const sentences = [
    rise === null ? 'Water not measured.' : `Water ${riseWords(rise)}, ${read}.`,
    water.level === null ? null : `Level ${water.level.toFixed(2)} m.`,
    wind.speed === null || wind.at === null
      ? 'Wind not measured.'
      : `Wind ${wind.speed} m/s, read ${clockTime(wind.at, zone, now)}.`,
  ];
  return sentences.filter((sentence) => sentence !== null).join(' ');
}

function riseWords(rise: number): string {
  const centimetres = Math.round(Math.abs(rise) * 100);
  if (centimetres === 0) return 'steady';
  return `${rise > 0 ? 'rising' : 'falling'} ${centimetres} cm an hour`;
}

/** A halt that is on, then what happened, the latest said last. */
export function safetyText({ halt, events, zone }: BuildState, now: string): string {
  const safety = events.filter(({ kind }) => safetyKinds.has(kind));
  const said = safety
    .slice(-saidInFull)
    .map(({ at, sentence }) => `${clockTime(at, zone, now)} ${closed(sentence)}`);
  const older = safety.length - said.length;
  const all = [
    ...(halt ? [`HALT ON since ${clockTime(halt.since, zone, now)}: ${closed(halt.why)}`] : []),
    ...(older > 0 ? [`${older} earlier in the record.`] : []),
    ...said,
  ];
  return all.length > 0 ? all.join(' ') : 'No events.';
}

/** With a full stop at its end, however it was typed. */
function closed(text: string): string {
  const trimmed = text.trim();
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}
