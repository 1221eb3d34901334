import { useMemo } from 'react';
import { useBuild } from '../../../data/useBuild.ts';
import type { Launching } from '../../../drawing/launchMoment.ts';
import { words } from '../../../words/words.ts';
import { useKits } from '../ground/useKits.ts';

/** The build's bridge with its kit; or why nothing can be reckoned, in a sentence. */
export function useLaunching(): Launching | string {
  const { state, api, linkKey } = useBuild();
  const { bridge, ground } = state;
  const { listed, kit, kits, unreachable } = useKits(api, linkKey, bridge?.kit.name ?? null);
  const said = words.launch;
  const launching = useMemo(
    () => (bridge && kit ? { bridge, kit, ground } : null),
    [bridge, kit, ground],
  );
  if (!bridge) return said.none;
  if (bridge.manner === 'floated') return said.floated;
  if (unreachable) return words.said.unreachable;
  if (kits && listed?.hash !== bridge.kit.hash) return said.kitOther;
  return launching ?? said.kitLoading;
}
