import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { RefusalReply } from '#shared/wire.ts';
import { useBuild } from './useBuild.ts';

/** What a page has fetched. A value once fetched stays, also when it can no longer be fetched anew. */
export type Fetched<Value> = {
  readonly value: Value | null;
  /** Device milliseconds at which the value came; 0 before. */
  readonly since: number;
  readonly trouble: 'none' | 'unreachable' | RefusalReply;
  readonly again: () => void;
};

/** Not an exception of ours: how the query's cache is told that nothing came. */
class NotFetched extends Error {
  readonly trouble: 'unreachable' | RefusalReply;

  constructor(trouble: 'unreachable' | RefusalReply) {
    super('not fetched');
    this.trouble = trouble;
  }
}

/**
 * Fetches something of this build, and anew whenever `whenever` changes: a page follows the feed without asking all
 * the time. `path` stands behind the build's own address.
 */
export function useFetched<Value>(path: string, whenever: unknown): Fetched<Value> {
  const { api, build, linkKey, online } = useBuild();
  const { data, error, dataUpdatedAt, refetch } = useQuery<Value, NotFetched>({
    queryKey: ['fetched', linkKey, path],
    queryFn: async () => {
      const answer = await api.get<Value>(`/api/builds/${build}/${path}`);
      if (answer.kind === 'ok') return answer.value;
      throw new NotFetched(answer.kind === 'refused' ? answer.refusal : 'unreachable');
    },
    retry: (tries, { trouble }) => trouble === 'unreachable' && tries < 2,
  });
  // Also when the line is back: what was missed meanwhile is fetched.
  // biome-ignore lint/correctness/useExhaustiveDependencies: fetched anew when these change, they are not read
  useEffect(() => {
    void refetch();
  }, [refetch, whenever, online]);
  return {
    value: data ?? null,
    since: dataUpdatedAt,
    trouble: error?.trouble ?? 'none',
    again: () => void refetch(),
  };
}
