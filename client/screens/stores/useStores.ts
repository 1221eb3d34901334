import { useQuery } from '@tanstack/react-query';
import type { StoresReply } from '#shared/wireStores.ts';
import { useBuild } from '../../data/useBuild.ts';

/** The stores as the server works them out, again whenever loads, work or plan change; null until they are here. */
export function useStores(): StoresReply | null {
  const { api, build, linkKey, state } = useBuild();
  const loads = Object.values(state.loads).map(({ status, at }) => `${status} ${at}`);
  const found = useQuery({
    queryKey: ['stores', linkKey, state.workNumber, state.planCount, ...loads],
    queryFn: () => api.get<StoresReply>(`/api/builds/${build}/stores`),
    placeholderData: (before) => before,
    // Time passes without news too.
    refetchInterval: 60_000,
  });
  return found.data?.kind === 'ok' ? found.data.value : null;
}
