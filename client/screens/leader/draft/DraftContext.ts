import { createContext, useContext } from 'react';
import type { Fault } from '#domain/fault.ts';
import type { Change } from '#domain/tasks/change.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Trial } from '../plan/useTrial.ts';

/** Changes that the leader gathers before planning again, and the plan on trial that was made with them. */
export type Draft = {
  readonly changes: readonly Change[];
  /** The order of work with the changes made; as it stands when they do not fit. */
  readonly work: Work;
  /** Why the changes cannot be made together; empty when they can. */
  readonly faults: readonly Fault[];
  readonly add: (change: Change) => void;
  readonly remove: (change: Change) => void;
  readonly clear: () => void;
  readonly trial: Trial;
};

export const DraftContext = createContext<Draft | null>(null);

/** The leader's draft. Only inside the leader's page. */
export function useDraft(): Draft {
  const draft = useContext(DraftContext);
  if (!draft) throw new Error('useDraft stands outside the leader’s page');
  return draft;
}
