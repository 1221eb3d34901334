import { type ReactNode, useCallback, useMemo, useState } from 'react';
import { applyChanges, type Change } from '#domain/tasks/change.ts';
import { usePorts } from '../../../data/ports/ports.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { useTrial } from '../plan/useTrial.ts';
import { DraftContext } from './DraftContext.ts';
import { withChange } from './draft.ts';

/** Keeps the leader's changes while pages come and go, and on the device until they are accepted or dropped. */
export function DraftProvider({ children }: { readonly children: ReactNode }) {
  const { state, linkKey } = useBuild();
  const { storage } = usePorts();
  const key = `spanwright.draft.${linkKey}`;
  const [changes, setChanges] = useState<readonly Change[]>(() => kept(storage.read(key)));
  const keep = useCallback(
    (next: readonly Change[]) => {
      storage.write(key, JSON.stringify(next));
      setChanges(next);
    },
    [storage, key],
  );
  const clear = useCallback(() => keep([]), [keep]);
  const trial = useTrial(clear);
  const applied = useMemo(() => applyChanges(state.work, changes), [state.work, changes]);
  const draft = {
    changes,
    work: applied.ok ? applied.value : state.work,
    faults: applied.ok ? [] : applied.reason,
    add: (change: Change) => keep(withChange(changes, change)),
    remove: (change: Change) => keep(changes.filter((one) => one !== change)),
    clear,
    trial,
  };
  return <DraftContext value={draft}>{children}</DraftContext>;
}

/** What the device kept; nothing when it cannot be read, because a draft is never a fact. */
function kept(text: string | null): readonly Change[] {
  try {
    const read: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(read) ? (read as Change[]) : [];
  } catch {
    return [];
  }
}
