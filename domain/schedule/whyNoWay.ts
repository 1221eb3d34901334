import { type Refusal, refusal } from '../refusal.ts';
import type { Task } from '../tasks/task.ts';
import type { Crew } from '../tasks/work.ts';

/** Why a task cannot be manned as it stands, in sentences that say what to do. Times in seconds. */

export function noCrewCan(task: Task, wants: string): Refusal {
  const sentence = `No crew can do ${named(task)}: it ${wants}. Add such a crew, or change who may do it.`;
  return refusal('no-crew-can', sentence, [task.id]);
}

export function crewTooSmall(task: Task, crew: Crew, people: number, least: number): Refusal {
  const sentence = `${named(task)} takes at least ${least} people of one crew, and ${crew.name} has ${people}. Put people into the crew, or lower the least.`;
  return refusal('crew-too-small', sentence, [task.id, crew.id]);
}

export function zoneTooSmall(
  task: Task,
  room: { readonly people: number; readonly zone: string },
): Refusal {
  const sentence = `${named(task)} takes more people than ${room.zone} has room for (${room.people}). Take fewer people, or split the task.`;
  return refusal('zone-too-small', sentence, [task.id]);
}

export function windowTooShort(task: Task, seconds: number, there: number): Refusal {
  const sentence = `${named(task)} takes ${seconds / 60} minutes, and its crew is there for ${there / 60}. Give the crew longer hours, or name another crew.`;
  return refusal('window-too-short', sentence, [task.id]);
}

export function lightTooShort(task: Task, seconds: number): Refusal {
  const sentence = `${named(task)} takes ${seconds / 60} minutes of daylight, and no day is as long. Split it, give it more people, or let it run into the dark.`;
  return refusal('light-too-short', sentence, [task.id]);
}

export function fixedAgainst(task: Task, what: string, of: readonly string[] = []): Refusal {
  const start = task.fixed?.start;
  const how = start === undefined ? 'has its crews fixed' : `is fixed to start at minute ${start}`;
  const sentence = `${named(task)} ${how}, and ${what}. Fix it otherwise, or free it.`;
  return refusal('fixed-blocked', sentence, [task.id, ...of]);
}

export function named(task: Task): string {
  return task.name === task.id ? `Task ${task.id}` : `${task.name} (${task.id})`;
}
