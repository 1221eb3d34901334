import type { BuildState } from '../progress/state.ts';
import { percentComplete } from '../progress/views/percent.ts';
import { spanOf } from '../progress/views/span.ts';
import { clockTime } from './clockTime.ts';

/** Name of the build, and where it is if that was measured: degrees, four decimals are about ten metres. */
export function siteText({ name, ground }: BuildState): string {
  const site = ground && ground.name !== name ? `${name}, ${ground.name}` : name;
  if (!ground?.place) return `${site}. Place not given.`;
  const { latitude, longitude } = ground.place;
  const north = `${Math.abs(latitude).toFixed(4)} ${latitude < 0 ? 'S' : 'N'}`;
  const east = `${Math.abs(longitude).toFixed(4)} ${longitude < 0 ? 'W' : 'E'}`;
  return `${site}, ${north} ${east}.`;
}

/** Type, length, class and gap. */
export function bridgeText({ bridge, ground }: BuildState): string {
  if (bridge === null) {
    return ground === null ? 'Work from a table of tasks; no bridge in it.' : 'None chosen yet.';
  }
  const { kit, manner, bays, length, loadClass, gap } = bridge;
  const type = `${kit.title}, ${manner}, ${bays} bays, ${metres(length)} m`;
  const own = kit.notForUse ? ' Demo kit: not for use.' : '';
  return `${type}, class ${loadClass}, over a gap of ${metres(gap)} m.${own}`;
}

/** Work complete with its measure named: a share of anything says nothing until one knows of what. */
export function workText(state: BuildState): string {
  const { done, total, share } = percentComplete(state);
  const tasks = state.work.tasks;
  const finished = tasks.filter(({ id }) => state.tasks[id]?.status === 'done').length;
  const hours = (minutes: number) => (minutes / 60).toFixed(1);
  return (
    `${Math.floor(share * 100 + 1e-9)} per cent by man-hours, ${hours(done)} of ${hours(total)} ` +
    `(expected minutes times usual people); ${finished} of ${tasks.length} tasks.`
  );
}

/** Bays and metres, which can be seen from the bank. */
export function builtText(state: BuildState): string {
  if (state.bridge === null) return 'No bridge.';
  const span = spanOf(state);
  const built = span.bays.filter(({ whole }) => whole === 'done').length;
  const sentences = [`${built} of ${span.bays.length} bays built.`];
  if (span.toMove > 0) {
    const stands = span.seated.near && span.seated.far ? ' Seated.' : span.landed ? ' Landed.' : '';
    sentences.push(`${metres(span.moved)} of ${metres(span.toMove)} m moved.${stands}`);
  }
  return sentences.join(' ');
}

/** When the first task truly began, beside when it should have. */
export function startedText({ tasks, start, zone }: BuildState, now: string): string {
  const planned = clockTime(start, zone, now);
  const begun = Object.values(tasks).flatMap(({ startedAt, earlier }) =>
    [startedAt, ...earlier.map((attempt) => attempt.startedAt)].filter((time) => time !== null),
  );
  if (begun.length === 0) return `Not started; planned ${planned}.`;
  const first = begun.reduce((a, b) => (Date.parse(b) < Date.parse(a) ? b : a));
  return `${clockTime(first, zone, now)}, planned ${planned}.`;
}

function metres(value: number): string {
  return String(Math.round(value * 10) / 10);
}
