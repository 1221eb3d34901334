import { faultInWords } from '../../tasks/measured.ts';
import { orderIndex } from '../orderIndex.ts';
import type { BuildState, Inspection } from '../state.ts';
import type { KnownEntry } from '../upcast.ts';
import { taskLabel } from '../words.ts';
import { changeTask } from './changeTask.ts';
import { bringBack, flagTasks, lapseHolds } from './consequences.ts';
import { addEvent } from './events.ts';

type Of<Kind extends KnownEntry['kind']> = Extract<KnownEntry, { kind: Kind }>;

/** A hold passed by an inspector; by whose concession and for what reason, where it took them. */
export function foldPass(state: BuildState, entry: Of<'hold-passed'>): BuildState {
  const { task, name, values, remark, concession, reason } = entry.body;
  const { ownWork = false, beyond = [], outside = [] } = entry.consequence ?? {};
  const passed = inspect(state, task, {
    ...found(entry, name, remark),
    kind: 'passed',
    values,
    ownWork,
    ...(concession && beyond.length > 0 ? { concession: { ...concession, of: beyond } } : {}),
    ...(reason && outside.length > 0 ? { allowed: { reason, of: outside } } : {}),
  });
  if (!concession || beyond.length === 0) return passed;
  const measures = orderIndex(state.work).task.get(task)?.hold?.measures ?? [];
  const faults = measures
    .filter(({ key }) => beyond.includes(key))
    .map((measure) => faultInWords(measure, values[measure.key]));
  const sentence = `${taskLabel(state, task)} passed by ${name} by concession of ${concession.name}, ${concession.authority}: ${faults.join('; ')}. Reason: ${concession.reason}`;
  return addEvent(passed, entry, { kind: 'conceded', sentence, task });
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
