import type { LoadState } from './state.ts';

/** A load of which nothing has been told: expected when the order of work says since `entry`. */
export function freshLoad(at: string, entry: number): LoadState {
  return { status: 'expected', at, why: null, planned: { at, entry }, tells: [] };
}

/**
 * Where a load is, derived anew from its live tells: in once told so, else as late as last told. Lateness told before
 * the order of work last changed its time is superseded.
 */
export function loadStanding(load: LoadState): LoadState {
  const { planned, tells } = load;
  const came = tells.find(({ kind }) => kind === 'in');
  if (came) return { ...load, status: 'in', at: came.at, why: null };
  const late = tells
    .filter(({ kind, entry }) => kind === 'late' && entry > planned.entry)
    .toSorted((a, b) => Date.parse(a.toldAt) - Date.parse(b.toldAt) || a.entry - b.entry)
    .at(-1);
  if (late) return { ...load, status: 'late', at: late.at, why: late.why };
  return { ...load, status: 'expected', at: planned.at, why: null };
}
