import { useMemo, useState } from 'react';
import { usePorts } from '../../../data/ports/ports.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { iso } from '../../../words/units.ts';
import { type Need, needsOf } from './needs.ts';

/** What needs the leader now, and how one of them is taken note of on this device. */
export type Needs = {
  readonly needs: readonly Need[];
  readonly take: (need: Need) => void;
};

/** Old notes are of no use once their number is long past; the list is kept short on the device. */
const seenKept = 200;

export function useNeeds(): Needs {
  const { state, now, linkKey } = useBuild();
  const { storage } = usePorts();
  const storeKey = `spanwright.seen.${linkKey}`;
  const [seen, setSeen] = useState<readonly string[]>(() => read(storage.read(storeKey)));
  const minute = Math.floor(now / 60_000) * 60_000;
  const needs = useMemo(() => needsOf(state, iso(minute), new Set(seen)), [state, minute, seen]);

  function take(need: Need): void {
    const next = [...seen, need.key].slice(-seenKept);
    storage.write(storeKey, JSON.stringify(next));
    setSeen(next);
  }
  return { needs, take };
}

function read(text: string | null): readonly string[] {
  try {
    const kept: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(kept) ? kept.filter((one) => typeof one === 'string') : [];
  } catch {
    return [];
  }
}
