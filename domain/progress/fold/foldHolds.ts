import type { BuildState, Inspection } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';
import { taskLabel } from '../words.ts';
import { changeTask } from './changeTask.ts';
import { bringBack, flagTasks, lapseHolds } from './consequences.ts';
import { addEvent } from './events.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

/** A hold passed by an inspector. */
export function foldPass(state: BuildState, entry: Of<'hold-passed'>): BuildState {
  const { task, name, values, remark } = entry.body;
  const ownWork = entry.consequence?.ownWork ?? false;
  return inspect(state, task, { ...found(entry, name, remark), kind: 'passed', values, ownWork });
}

/** A hold that failed, with the work that comes back. */
export function foldFailure(state: BuildState, entry: Of<'hold-failed'>): BuildState {
  const { task, name, values, why } = entry.body;
  const failed = inspect(state, task, {
    ...found(entry, name, why),
    kind: 'failed',
    values,
    ownWork: false,
  });
  const reason = `${taskLabel(state, task)} failed: ${why}`;
  const causes = [task, ...(entry.consequence?.redo ?? []).map((each) => each.task)];
  const back = flagTasks(bringBack(failed, entry, reason), entry, causes);
  const lapsed = lapseHolds(back, entry, reason);
  return addEvent(lapsed, entry, { kind: 'hold-failed', sentence: `${reason} (${name}).`, task });
}

function found(
  entry: KnownEntry,
  name: string,
  why: string,
): Pick<Inspection, 'entry' | 'at' | 'name' | 'why'> {
  return { entry: entry.number, at: entry.happenedAt, name, why };
}

function inspect(state: BuildState, task: string, inspection: Inspection): BuildState {
  return changeTask(state, task, (before) => ({
    ...before,
    inspections: [...before.inspections, inspection],
  }));
}
