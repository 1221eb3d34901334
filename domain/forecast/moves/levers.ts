import type { Minutes } from '../../tasks/task.ts';
import type { Forecast } from '../forecast.ts';
import { type Lever, type LeverSizes, numberWord } from './lever.ts';
import { withMorePeople } from './morePeople.ts';
import type { Seen } from './seen.ts';
import { withTruckEarlier } from './truckEarlier.ts';

/** Holds and slow cases beyond these are not worth their simulation: the chain hardly ever goes through them. */
const mostHolds = 3;
const mostSlow = 5;

/** All that is worth trying at this moment. `forecast` says which tasks set the opening. */
export function leversOf(seen: Seen, forecast: Forecast, sizes: LeverSizes): Lever[] {
  return [
    ...people(seen, sizes.people),
    ...trucks(seen, sizes.truckEarlier),
    ...lights(seen, forecast),
    ...holds(seen, forecast),
    ...slowCases(seen, forecast),
    ...vehicle(seen, sizes),
  ];
}

function people({ work, plan, past }: Seen, count: number): Lever[] {
  const begun = new Set(past.tasks.map(({ task }) => task));
  const busy = new Set(
    plan.tasks
      .filter(({ task }) => !begun.has(task))
      .flatMap(({ crews }) => crews.filter((each) => each.people > 0).map(({ crew }) => crew)),
  );
  return work.crews
    .filter(({ id, attached }) => !attached && busy.has(id))
    .map(({ id, name }) => ({
      kind: 'people',
      of: id,
      words: `${numberWord(count)} more ${count === 1 ? 'person' : 'people'} in ${name}`,
      help: true,
      change: (seen) => withMorePeople(seen, id, count),
    }));
}

function trucks({ work, past }: Seen, minutes: number): Lever[] {
  const wanted = new Set(work.tasks.flatMap(({ loads }) => loads));
  return work.loads
    .filter(({ id, arrives }) => wanted.has(id) && arrives > past.now)
    .map(({ id, name }) => ({
      kind: 'truck-earlier',
      of: id,
      words: `${name} ${minutes} min earlier`,
      help: true,
      change: (seen) => withTruckEarlier(seen, id, minutes),
    }));
}

function lights({ doubts: { doubt, dark = [] }, past }: Seen, { p90 }: Forecast): Lever[] {
  const falls = dark.some(({ from, to }) => to > past.now && from < p90);
  if (!doubt.light.on || doubt.light.lights || !falls) return [];
  const change = (seen: Seen): Seen => {
    const lit = { ...seen.doubts.doubt.light, lights: true };
    return { ...seen, doubts: { ...seen.doubts, doubt: { ...seen.doubts.doubt, light: lit } } };
  };
  return [{ kind: 'lights', words: 'Work lights for the dark', help: true, change }];
}

/** Tasks that have not begun, those most often on the chain first. */
function toCome({ work, past }: Seen, { onChain }: Forecast) {
  const begun = new Set(past.tasks.map(({ task }) => task));
  const byId = new Map(work.tasks.map((task) => [task.id, task]));
  return onChain.flatMap(({ task }) => {
    const own = byId.get(task);
    return own && !begun.has(task) ? [own] : [];
  });
}

function holds(seen: Seen, forecast: Forecast): Lever[] {
  return toCome(seen, forecast)
    .filter(({ hold, minutes }) => hold && minutes.slow > minutes.quick)
    .slice(0, mostHolds)
    .map(({ id, name }) => ({
      kind: 'hold-prepared',
      of: id,
      words: `${name} prepared beforehand, so that it takes its quick minutes`,
      help: true,
      change: (was) => withMinutes(was, id, ({ quick }) => quick),
    }));
}

function slowCases(seen: Seen, forecast: Forecast): Lever[] {
  return toCome(seen, forecast)
    .filter(({ hold, minutes }) => !hold && minutes.slow > minutes.quick)
    .slice(0, 4 * mostSlow)
    .toSorted((one, other) => slowness(other.minutes) - slowness(one.minutes))
    .slice(0, mostSlow)
    .map(({ id, name, minutes }) => ({
      kind: 'slow-case',
      of: id,
      words: `${name} takes its slow ${minutes.slow} min`,
      help: false,
      change: (was) => withMinutes(was, id, ({ slow }) => slow),
    }));
}

function slowness({ likely, slow }: Minutes): number {
  return slow - likely;
}

function vehicle(seen: Seen, { vehicleWait, winch }: LeverSizes): Lever[] {
  const begun = new Set(seen.past.tasks.map(({ task }) => task));
  const moves = new Set(
    seen.work.tasks
      .filter(({ id, effect }) => effect?.kind === 'move' && !begun.has(id))
      .map(({ id }) => id),
  );
  if (moves.size === 0) return [];
  const wait = (was: Seen): Seen => ({
    ...was,
    plan: {
      ...was.plan,
      tasks: was.plan.tasks.map((planned) =>
        moves.has(planned.task)
          ? { ...planned, release: Math.max(planned.release, was.past.now + vehicleWait) }
          : planned,
      ),
    },
  });
  const byWinch = (was: Seen): Seen =>
    [...moves].reduce(
      (now, move) => withMinutes(now, move, (minutes, name) => winch * minutes[name]),
      was,
    );
  return [
    {
      kind: 'vehicle-wait',
      words: `The push vehicle lost, another there in ${vehicleWait} min`,
      help: false,
      change: wait,
    },
    {
      kind: 'vehicle-winch',
      words: `The push vehicle lost, moves by winch ${winch} times as long`,
      help: false,
      change: byWinch,
    },
  ];
}

function withMinutes(
  seen: Seen,
  id: string,
  to: (minutes: Minutes, name: keyof Minutes) => number,
): Seen {
  const tasks = seen.work.tasks.map((task) => {
    if (task.id !== id) return task;
    const { minutes } = task;
    return {
      ...task,
      minutes: {
        quick: to(minutes, 'quick'),
        likely: to(minutes, 'likely'),
        slow: to(minutes, 'slow'),
      },
    };
  });
  return { ...seen, work: { ...seen.work, tasks } };
}
