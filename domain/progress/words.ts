import { orderIndex } from './orderIndex.ts';
import type { BuildState } from './state.ts';

/** A task as it is called on the radio: name and number. */
export function taskLabel(state: Pick<BuildState, 'work'>, task: string): string {
  const known = orderIndex(state.work).task.get(task);
  return known ? `${known.name} (${known.number})` : task;
}

/** A crew by its name, else by its id. */
export function crewLabel(state: Pick<BuildState, 'work'>, crew: string): string {
  return state.work.crews.find(({ id }) => id === crew)?.name ?? crew;
}

/** A zone by its name, else by its id. */
export function zoneLabel(state: Pick<BuildState, 'work'>, zone: string): string {
  return state.work.zones.find(({ id }) => id === zone)?.name ?? zone;
}

/** A name as it is compared: however somebody types it, it is one person. */
export function plainName(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLocaleLowerCase('en');
}

/** "a", "a and b", "a, b and c". */
export function inWords(things: readonly string[]): string {
  if (things.length < 2) return things.join('');
  return `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`;
}

/** "1 minute", "8 minutes", "2.5 minutes". */
export function minutesInWords(minutes: number): string {
  const rounded = Math.round(minutes * 10) / 10;
  return `${rounded} ${rounded === 1 ? 'minute' : 'minutes'}`;
}

/** A status as a sentence says it. */
export const statusWords = {
  'to-come': 'not started',
  'at-work': 'at work',
  stopped: 'stopped',
  done: 'done',
} as const;

export const holdWords = {
  none: 'no hold',
  open: 'not passed yet',
  passed: 'passed',
  failed: 'failed',
  lapsed: 'lapsed',
} as const;
