import type { Link, Work } from '#domain/tasks/work.ts';
import { type SmInstance, smInstance } from './smInstance.ts';

/** A benchmark instance as an order of work: a period is a minute, a resource a crew, a job on several a joint task. */
export function smWork(text: string): Work {
  const { jobs, durations, successors, demands, capacities }: SmInstance = smInstance(text);
  const crews = capacities.map((people, at) => ({
    id: `R${at + 1}`,
    name: `Resource ${at + 1}`,
    people,
    skills: [],
    attached: false,
  }));
  const tasks = Array.from({ length: jobs }, (_, job) => ({
    id: `${job + 1}`,
    number: job + 1,
    name: `Job ${job + 1}`,
    phase: '',
    needs: (demands[job] ?? []).flatMap((count, at) =>
      count > 0
        ? [{ anyOf: [`R${at + 1}`], people: { least: count, usual: count, most: count } }]
        : [],
    ),
    minutes: { quick: durations[job]!, likely: durations[job]!, slow: durations[job]! },
    zones: [],
    keepOff: false,
    opens: false,
    cautions: [],
    tools: [],
    loads: [],
  }));
  const links = successors.flatMap((after, from) =>
    after.map((to): Link => ({ from: `${from + 1}`, to: `${to + 1}`, counts: 'finish', wait: 0 })),
  );
  return { tasks, links, crews, zones: [], loads: [] };
}
