import type { Seen } from './seen.ts';

/** The build with one truck so many minutes earlier, but not before now. Order and people stay as planned. */
export function withTruckEarlier(seen: Seen, truck: string, minutes: number): Seen {
  const { work, plan, past } = seen;
  const loads = work.loads.map((load) =>
    load.id === truck ? { ...load, arrives: Math.max(past.now, load.arrives - minutes) } : load,
  );
  const arrives = new Map(loads.map((load) => [load.id, load.arrives]));
  const comesOn = new Map(work.crews.map(({ id, from }) => [id, from ?? 0]));
  const waiting = new Map(
    work.tasks.filter((task) => task.loads.includes(truck)).map((task) => [task.id, task]),
  );
  return {
    ...seen,
    work: { ...work, loads },
    plan: {
      ...plan,
      tasks: plan.tasks.map((planned) => {
        const task = waiting.get(planned.task);
        if (!task) return planned;
        const stores = task.loads.map((load) => arrives.get(load) ?? 0);
        const crews = planned.crews.map(({ crew }) => comesOn.get(crew) ?? 0);
        const release = Math.max(0, ...stores, ...crews);
        return { ...planned, release: Math.min(planned.release, release) };
      }),
    },
  };
}
