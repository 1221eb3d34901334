import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { Entry } from '#domain/progress/entry.ts';
import type { RecordPage } from '#shared/wireBuilds.ts';
import type { Answer } from './api.ts';
import { useBuild } from './useBuild.ts';

/** The end of the record as the page holds it. */
export type LastEntries = {
  /** Latest first; null until they are here. */
  readonly entries: readonly Entry[] | null;
  readonly head: RecordPage['head'] | null;
  /** Why they are not here: the refusal's sentence, or that nothing answers. */
  readonly trouble: 'unreachable' | { readonly sentence: string } | null;
};

/** The last `count` entries of the record, read again whenever the board moves on. */
export function useLastEntries(count: number): LastEntries {
  const { api, build, linkKey, state } = useBuild();
  const { data } = useQuery<Answer<RecordPage>>({
    queryKey: ['record', linkKey, count, state.number],
    queryFn: () => {
      const after = Math.max(0, state.number - count);
      return api.get<RecordPage>(`/api/builds/${build}/record?after=${after}&limit=${count}`);
    },
    placeholderData: keepPreviousData,
    gcTime: 60_000,
  });
  if (!data) return { entries: null, head: null, trouble: null };
  if (data.kind === 'unreachable') return { entries: null, head: null, trouble: 'unreachable' };
  if (data.kind === 'refused') {
    return { entries: null, head: null, trouble: { sentence: data.refusal.sentence } };
  }
  const entries = data.value.entries.map(({ text }) => JSON.parse(text) as Entry).reverse();
  return { entries, head: data.value.head, trouble: null };
}
