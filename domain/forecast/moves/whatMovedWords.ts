import { expectedMinutes } from '../../tasks/expected.ts';
import type { Work } from '../../tasks/work.ts';
import { loading, type Pace, projected } from '../learn/pace.ts';
import { paceWords } from '../learn/paceWords.ts';
import type { Seen } from './seen.ts';

/** Things named in one reason: more would not be read. */
const most = 2;

function listed(words: readonly string[], otherwise: string): string {
  if (words.length === 0) return otherwise;
  const more = words.length - most;
  const named = words.slice(0, most).join(', ');
  return more > 0 ? `${named} and ${more} more` : named;
}

export function planWhy(before: Seen, after: Seen): string {
  return before.plan === after.plan ? 'the order of work changed' : 'a new plan was accepted';
}

/** Loads whose time changed, the largest change first. */
export function storesWhy(before: Seen, after: Seen): string {
  const was = new Map(before.work.loads.map(({ id, arrives }) => [id, arrives]));
  const moved = after.work.loads
    .map(({ id, name, arrives }) => ({ name, by: arrives - (was.get(id) ?? arrives) }))
    .filter(({ by }) => Math.abs(by) >= 0.5)
    .sort((one, other) => Math.abs(other.by) - Math.abs(one.by))
    .map(({ name, by }) => `${name} ${Math.round(Math.abs(by))} min ${by > 0 ? 'late' : 'early'}`);
  return listed(moved, 'stores come at other times');
}

/** Crews whose strength changed. */
export function strengthWhy(before: Seen, after: Seen): string {
  const was = new Map(before.work.crews.map(({ id, people }) => [id, people]));
  const changed = after.work.crews
    .filter(({ id, people }) => (was.get(id) ?? people) !== people)
    .map(({ id, name, people }) => `${name} has ${people} in place of ${was.get(id)}`);
  return listed(changed, 'crews have other people');
}

/** What is stated otherwise, or has since been told of a truck, so that it can no longer be late unexpectedly. */
export function doubtWhy(before: Seen, after: Seen): string {
  const stated = JSON.stringify(before.doubts.doubt) !== JSON.stringify(after.doubts.doubt);
  if (stated) return 'what is stated of doubt and conditions changed';
  const was = new Set(before.doubts.toldLoads ?? []);
  const told = new Set((after.doubts.toldLoads ?? []).filter((load) => !was.has(load)));
  const names = after.work.loads.filter(({ id }) => told.has(id)).map(({ name }) => name);
  if (names.length === 0) return 'what is in doubt changed';
  return `${listed(names, '')} no longer in doubt`;
}

/**
 * What happened between the two looks that was least like the estimates and moved the opening this way: stopped or slow
 * work where it moved by `minutes` above 0, that is later, else quick work and doubt that is settled.
 */
export function progressWhy(before: Seen, after: Seen, minutes: number): string {
  const later = minutes > 0;
  const tasks = new Map(after.work.tasks.map((task) => [task.id, task]));
  const planned = new Map(after.plan.tasks.map((task) => [task.task, task]));
  const was = new Map(before.past.tasks.map((task) => [task.task, task.status]));
  const news = after.past.tasks
    .filter(({ task, status }) => was.get(task) !== status || status === 'at-work')
    .flatMap(({ task: id, status, start, finish }) => {
      const task = tasks.get(id);
      if (!task) return [];
      if (status === 'stopped') {
        return [{ over: Number.POSITIVE_INFINITY, words: `${task.name} stands still` }];
      }
      const shape = after.plan.shape;
      const expected = expectedMinutes(task.minutes, shape) * (planned.get(id)?.stretch ?? 1);
      const took = (finish ?? after.past.now) - start;
      // Work still under way has so far only shown when it is late.
      const over = status === 'done' ? took - expected : Math.max(0, took - expected);
      const verb = status === 'done' ? 'took' : 'is at work for';
      const words = `${task.name} ${verb} ${Math.round(took)} min in place of ${Math.round(expected)}`;
      return [{ over, words }];
    })
    .map(({ over, words }) => ({ off: later ? over : -over, words }))
    .filter(({ off }) => off >= 1)
    .sort((one, other) => other.off - one.off);
  const said = listed(
    news.map(({ words }) => words),
    later ? 'time went on' : settled,
  );
  const named = news.reduce((sum, { off }) => sum + off, 0);
  // A time promised with high confidence comes nearer with all that goes as expected: quick work explains only its own.
  return later || news.length === 0 || named > -minutes / 2 ? said : `${settled}; also ${said}`;
}

const settled = 'what is done is no longer in doubt';

/** The crews whose pace is now seen most differently, in the direction of the move. */
export function paceWhy({ crews }: Work, before: Pace, after: Pace, later: boolean): string {
  const middle = (pace: Pace, crew: string) => projected(pace, loading(pace, [crew])).mean;
  const changed = crews
    .map(({ id, name }) => ({
      name,
      pace: paceWords(Math.exp(middle(after, id))),
      by: (middle(after, id) - middle(before, id)) * (later ? 1 : -1),
    }))
    .filter(({ by, pace }) => by >= 0.02 && pace !== asPlanned)
    .sort((one, other) => other.by - one.by)
    .map(({ name, pace }) => `${name} takes ${pace}`);
  return listed(changed, later ? 'the pace is a little slower' : 'the pace is known better');
}

const asPlanned = paceWords(1);
