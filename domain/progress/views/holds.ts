import type { BuildState, HoldStatus, Inspection, TaskState } from '../state.ts';

/** A hold point and what was found at it. */
export type HoldNow = {
  readonly task: string;
  readonly number: number;
  readonly name: string;
  readonly status: HoldStatus;
  /** When it was passed, failed or lapsed last. */
  readonly at: string | null;
  /** The inspector who passed it. */
  readonly passedBy: string | null;
  readonly ownWork: boolean;
  /** Why it failed or lapsed. */
  readonly why: string | null;
  readonly values: TaskState['values'];
  readonly failures: number;
  /** Who let values outside a hard limit stand; null where none are, or it is not passed. */
  readonly concession: NonNullable<Inspection['concession']> | null;
  /** Why values stand outside the range where they ought to lie; null where none do, or it is not passed. */
  readonly allowed: NonNullable<Inspection['allowed']> | null;
};

/** Every hold point, in the order of work. */
export function holdsOf(state: BuildState): HoldNow[] {
  return state.work.tasks.flatMap((task): HoldNow[] => {
    const standing = state.tasks[task.id];
    if (!task.hold || !standing) return [];
    const { hold, passedBy, ownWork, values, failures, inspections } = standing;
    const last = inspections.at(-1);
    return [
      {
        task: task.id,
        number: task.number,
        name: task.name,
        status: hold,
        at: last?.at ?? null,
        passedBy,
        ownWork,
        why: hold === 'failed' || hold === 'lapsed' ? (last?.why ?? null) : null,
        values,
        failures,
        concession: (hold === 'passed' && last?.concession) || null,
        allowed: (hold === 'passed' && last?.allowed) || null,
      },
    ];
  });
}
