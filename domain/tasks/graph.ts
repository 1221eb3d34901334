import { Graph } from '@dagrejs/graphlib';
import type { Link, Work } from './work.ts';

/**
 * The order of work as a directed multigraph: a node for each task (label: its row in `work.tasks`), an edge for each
 * link (label: the link). Links to tasks that do not exist are left out; `workFaults` names them.
 */
export function taskGraph(work: Work): Graph<undefined, number, Link> {
  const graph = new Graph<undefined, number, Link>({ directed: true, multigraph: true });
  for (const [row, task] of work.tasks.entries()) {
    graph.setNode(task.id, row);
  }
  for (const link of work.links) {
    if (graph.hasNode(link.from) && graph.hasNode(link.to)) {
      graph.setEdge(link.from, link.to, link, link.counts);
    }
  }
  return graph;
}

/**
 * The tasks of one loop in the order of work, each coming after the one before it and the first after the last;
 * null when there is none. Walks with its own stack, so that a chain of any length can be followed.
 */
export function findLoop(work: Work): string[] | null {
  const graph = taskGraph(work);
  const walked = new Set<string>();
  for (const task of work.tasks) {
    if (walked.has(task.id)) {
      continue;
    }
    const path: string[] = [task.id];
    const onPath = new Set(path);
    const ahead: string[][] = [graph.successors(task.id) ?? []];
    while (path.length > 0) {
      const next = ahead.at(-1)?.pop();
      if (next === undefined) {
        const left = path.pop() as string;
        ahead.pop();
        onPath.delete(left);
        walked.add(left);
      } else if (onPath.has(next)) {
        return path.slice(path.indexOf(next));
      } else if (!walked.has(next)) {
        path.push(next);
        onPath.add(next);
        ahead.push(graph.successors(next) ?? []);
      }
    }
  }
  return null;
}

/**
 * Ids of all tasks so that each stands behind everything it comes after; among those that may come next, the earlier
 * row first come. Null when the order has a loop. Iterative: graphlib's own sort overflows on chains of thousands.
 */
export function topologicalOrder(work: Work): string[] | null {
  const graph = taskGraph(work);
  const open = new Map<string, number>();
  const order: string[] = [];
  for (const task of work.tasks) {
    const before = graph.predecessors(task.id)?.length ?? 0;
    open.set(task.id, before);
    if (before === 0) {
      order.push(task.id);
    }
  }
  for (let at = 0; at < order.length; at += 1) {
    for (const next of graph.successors(order[at] as string) ?? []) {
      const left = (open.get(next) ?? 0) - 1;
      open.set(next, left);
      if (left === 0) {
        order.push(next);
      }
    }
  }
  return order.length === open.size ? order : null;
}

/** Ids of every task that comes after `task`, directly or through others, without the task itself. */
export function everythingAfter(work: Work, task: string): Set<string> {
  const graph = taskGraph(work);
  const after = new Set<string>();
  const ahead = [task];
  for (let at = ahead.pop(); at !== undefined; at = ahead.pop()) {
    for (const next of graph.successors(at) ?? []) {
      if (!after.has(next) && next !== task) {
        after.add(next);
        ahead.push(next);
      }
    }
  }
  return after;
}
