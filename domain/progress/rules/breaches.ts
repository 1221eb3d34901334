import type { Task } from '../../tasks/task.ts';
import type { Command } from '../command.ts';
import type { Breach } from '../entry.ts';
import { orderIndex } from '../orderIndex.ts';
import { isAtWork, isOfEarlierAttempt } from '../standing.ts';
import type { BuildState } from '../state.ts';
import { inWords, taskLabel, zoneLabel } from '../words.ts';
import { beforeTask } from './before.ts';

type WorkTold = Extract<
  Command,
  { kind: 'tell-started' | 'tell-finished' | 'tell-resumed' | 'tell-part' | 'tell-stopped' }
>;

const verbs = {
  'tell-started': 'started',
  'tell-resumed': 'resumed',
  'tell-finished': 'finished',
  'tell-part': 'partly done',
  'tell-stopped': 'stopped',
} as const;

/**
 * The rules that a tell about work breaks: halt, keep-off, order, hold. Looked at when work is told to begin or go on,
 * and when it is told further on or done without ever having been told to begin. Finishing and stopping never break a
 * halt. What happened before a halt or a keep-off task began does not break it, however late it is told.
 */
export function breachesOf(state: BuildState, command: WorkTold, happenedAt: string): Breach[] {
  const { task: id, crew } = command.body;
  const task = orderIndex(state.work).task.get(id)!;
  const standing = state.tasks[id]!;
  if (isOfEarlierAttempt(standing, happenedAt)) return [];
  const share = standing.shares.find((each) => each.crew === crew);
  const goesOn = command.kind === 'tell-started' || command.kind === 'tell-resumed';
  const unannounced =
    command.kind !== 'tell-stopped' && standing.status !== 'stopped' && !isUnderWay(share?.status);
  if (!goesOn && !unannounced) return [];
  if (standing.status === 'done' && command.kind !== 'tell-resumed') return [];
  const told = `${taskLabel(state, id)} was told ${verbs[command.kind]}`;
  return [
    ...(goesOn ? haltBreach(state, id, told, happenedAt) : []),
    ...closedZones(state, task, told, happenedAt),
    ...(task.keepOff && !isAtWork(standing) ? notAsked(state, task, told) : []),
    ...outOfOrder(state, id, told, happenedAt),
  ];
}

function isUnderWay(status: string | undefined): boolean {
  return status !== undefined && status !== 'to-come';
}

function haltBreach(state: BuildState, id: string, told: string, happenedAt: string): Breach[] {
  if (!state.halt || Date.parse(happenedAt) < Date.parse(state.halt.since)) return [];
  return [{ rule: 'halt', sentence: `${told} while a halt is on.`, of: [id] }];
}

function closedZones(state: BuildState, task: Task, told: string, happenedAt: string): Breach[] {
  return state.work.tasks.flatMap((other): Breach[] => {
    const running = state.tasks[other.id];
    if (!other.keepOff || other.id === task.id || !running || !isAtWork(running)) return [];
    if (running.startedAt && Date.parse(happenedAt) < Date.parse(running.startedAt)) return [];
    const closed = other.zones.filter((zone) => task.zones.includes(zone));
    if (closed.length === 0) return [];
    const zones = inWords(closed.map((zone) => zoneLabel(state, zone)));
    const sentence = `${told} while ${taskLabel(state, other.id)} closes ${zones}.`;
    return [{ rule: 'keep-off', sentence, of: [other.id, ...closed] }];
  });
}

function notAsked(state: BuildState, task: Task, told: string): Breach[] {
  const inItsZones = state.work.tasks.filter(({ id, zones }) => {
    const standing = state.tasks[id];
    if (id === task.id || !standing || !isAtWork(standing)) return false;
    return zones.some((zone) => task.zones.includes(zone));
  });
  const sentence = `${told} without being asked for: nobody made sure that its zones are clear.`;
  return [
    { rule: 'keep-off', sentence, of: [task.id] },
    ...inItsZones.map(
      ({ id }): Breach => ({
        rule: 'keep-off',
        sentence: `${told} while ${taskLabel(state, id)} is at work in its zones.`,
        of: [task.id, id],
      }),
    ),
  ];
}

function outOfOrder(state: BuildState, id: string, told: string, happenedAt: string): Breach[] {
  return beforeTask(state, id, happenedAt)
    .filter(({ met }) => !met)
    .map(({ kind, of, sentence }) => ({
      rule: kind === 'hold' ? 'hold' : 'order',
      sentence: `${told} too early. ${sentence}`,
      of: [of],
    }));
}
