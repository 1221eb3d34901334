import { useQuery } from '@tanstack/react-query';
import type { Kit } from '#domain/kit/kit.ts';
import type { KitListed } from '#shared/wireBuilds.ts';
import type { Api } from '../../../data/api.ts';

/** The kits of the server, and one of them whole; null until they are here. */
export function useKits(api: Api, linkKey: string, chosen: string | null) {
  const list = useQuery({
    queryKey: ['kits', linkKey],
    queryFn: () => api.get<{ readonly kits: readonly KitListed[] }>('/api/kits'),
    staleTime: Number.POSITIVE_INFINITY,
  });
  const kits = list.data?.kind === 'ok' ? list.data.value.kits : null;
  const listed = kits?.find(({ name }) => name === chosen) ?? kits?.[0] ?? null;
  const whole = useQuery({
    queryKey: ['kit', linkKey, listed?.name],
    queryFn: () => api.get<Kit>(`/api/kits/${listed?.name ?? ''}`),
    enabled: listed !== null,
    staleTime: Number.POSITIVE_INFINITY,
  });
  const kit = whole.data?.kind === 'ok' ? whole.data.value : null;
  const unreachable = list.data?.kind === 'unreachable' || whole.data?.kind === 'unreachable';
  return {
    kits,
    listed,
    kit: kit && listed && kit.name === listed.name ? kit : null,
    unreachable,
    again: () => {
      void list.refetch();
      void whole.refetch();
    },
  };
}
