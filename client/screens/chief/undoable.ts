import type { WithdrawableTell } from '#domain/progress/state.ts';
import { withdrawable } from '#domain/progress/views/recent.ts';
import { useBuild } from '../../data/useBuild.ts';
import { iso } from '../../words/units.ts';

/** The last tell that this link may take back now. Only what the server has confirmed has a number to name. */
export function useUndoable(): WithdrawableTell | undefined {
  const { state, you, now } = useBuild();
  return withdrawable(state, you, iso(now)).at(-1);
}
