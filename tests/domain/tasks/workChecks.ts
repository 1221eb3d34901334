import { Graph } from '@dagrejs/graphlib';
import Value from 'typebox/value';
import { expect } from 'vitest';
import type { Task } from '#domain/tasks/task.ts';
import { Work } from '#domain/tasks/work.ts';

/** The links of an order of work as a graph, each from what comes first. */
export function graphOf(work: Work): Graph {
  const graph = new Graph({ directed: true });
  for (const { id } of work.tasks) graph.setNode(id);
  for (const { from, to } of work.links) graph.setEdge(from, to);
  return graph;
}

/** Everything that a task comes after, directly or through others. */
export function everythingBefore(graph: Graph, id: string): Set<string> {
  const before = new Set<string>();
  const waiting = [id];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    for (const one of graph.predecessors(at) ?? []) {
      if (!before.has(one)) {
        before.add(one);
        waiting.push(one);
      }
    }
  }
  return before;
}

export function taskOf(work: Work, id: string): Task {
  const task = work.tasks.find((one) => one.id === id);
  if (!task) throw new Error(`no task ${id}`);
  return task;
}

/** All that must hold of an order of work made from a kit, whatever the kit and the bridge. */
export function expectSoundOrder(work: Work): void {
  expect(Value.Check(Work, work)).toBe(true);
  const ids = work.tasks.map(({ id }) => id);
  const idsOf = (things: readonly { readonly id: string }[]) => new Set(things.map(({ id }) => id));
  expect(new Set(ids).size).toBe(ids.length);
  expect(work.tasks.map(({ number }) => number)).toEqual(ids.map((_, at) => at + 1));
  const tasks = new Set(ids);
  const [crews, zones, loads] = [idsOf(work.crews), idsOf(work.zones), idsOf(work.loads)];
  for (const task of work.tasks) {
    expect(JSON.stringify(task)).not.toContain('{}');
    expect(`${task.id} ${task.name}`).not.toMatch(/[{}]/);
    expect(task.needs.flatMap(({ anyOf }) => anyOf).filter((id) => !crews.has(id))).toEqual([]);
    expect(task.zones.filter((id) => !zones.has(id))).toEqual([]);
    expect(task.loads.filter((id) => !loads.has(id))).toEqual([]);
    expect((task.hold?.redo ?? []).filter((id) => !tasks.has(id))).toEqual([]);
    expect(task.minutes.quick).toBeLessThanOrEqual(task.minutes.likely);
    expect(task.minutes.likely).toBeLessThanOrEqual(task.minutes.slow);
  }
  expect(work.links.filter(({ from, to }) => !tasks.has(from) || !tasks.has(to))).toEqual([]);

  const graph = graphOf(work);
  // Kahn's way: take away what nothing comes before, until nothing is left or a loop is.
  const left = graphOf(work);
  for (let free = left.sources(); free.length > 0; free = left.sources()) {
    for (const id of free) left.removeNode(id);
  }
  expect(left.nodes()).toEqual([]);

  const opening = work.tasks.filter(({ opens }) => opens);
  expect(opening).toHaveLength(1);
  expect(opening[0]?.hold).toBeDefined();
  expect(graph.sinks()).toContain(opening[0]?.id);

  for (const { id, hold, opens } of work.tasks) {
    if (hold && !opens) expect(graph.successors(id)?.length).toBeGreaterThan(0);
    const before = everythingBefore(graph, id);
    // What a failed hold sends back is work that was done for it.
    expect((hold?.redo ?? []).filter((redo) => !before.has(redo))).toEqual([]);
  }
  const guards = work.tasks
    .filter(({ effect }) => effect?.kind === 'move')
    .map(({ id }) => (graph.predecessors(id) ?? []).filter((one) => taskOf(work, one).hold));
  // Every move has a hold of its own.
  expect(guards.every((holds) => holds.length >= 1)).toBe(true);
  expect(new Set(guards.flat()).size).toBeGreaterThanOrEqual(guards.length);
}
