import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useEffect, useMemo, useSyncExternalStore } from 'react';
import type { Snapshot } from '#shared/wire.ts';
import { createApi } from './api.ts';
import { createLive, type LiveState } from './live.ts';
import { withOwnTells } from './ownTells.ts';
import { keyOf } from './place.ts';
import { usePorts } from './ports/ports.ts';
import { createSender, isOpen } from './sender.ts';
import { BuildContext, type BuildView } from './useBuild.ts';
import { useNow } from './useNow.ts';

type Props = {
  readonly build: string;
  readonly secret: string;
  /** Shown until the first snapshot is here, and when the link is refused. */
  readonly meanwhile: (live: LiveState) => ReactNode;
  readonly children: ReactNode;
};

/** Follows one build by one link and hands it to the page below. */
export function BuildProvider({ build, secret, meanwhile, children }: Props) {
  const { clock, ids, network } = usePorts();
  const queries = useQueryClient();
  const linkKey = keyOf(build, secret);
  const key = useMemo(() => ['snapshot', linkKey], [linkKey]);

  const { api, live, sender } = useMemo(() => {
    const api = createApi(network, clock, secret);
    const cache = {
      read: () => queries.getQueryData<Snapshot>(key),
      write: (snapshot: Snapshot) => void queries.setQueryData(key, snapshot),
    };
    return {
      api,
      live: createLive(api, clock, build, cache),
      sender: createSender(api, clock, ids, build),
    };
  }, [network, clock, ids, secret, build, queries, key]);

  // The feed is what fetches: the query only holds.
  const { data: snapshot } = useQuery<Snapshot>({
    queryKey: key,
    enabled: false,
    gcTime: Number.POSITIVE_INFINITY,
    queryFn: () => Promise.reject(new Error('the feed writes the snapshot')),
  });
  const heard = useSyncExternalStore(live.subscribe, live.read, live.read);
  const sendings = useSyncExternalStore(sender.subscribe, sender.read, sender.read);
  const now = useNow(5000, heard.skew);

  useEffect(() => live.follow(), [live]);

  useEffect(() => {
    const back = (): void => {
      if (document.visibilityState === 'hidden') return;
      live.nudge();
      sender.nudge();
    };
    window.addEventListener('online', back);
    document.addEventListener('visibilitychange', back);
    return () => {
      window.removeEventListener('online', back);
      document.removeEventListener('visibilitychange', back);
    };
  }, [live, sender]);

  const unsent = sendings.some(isOpen);
  useEffect(() => {
    if (!unsent) return;
    const ask = (event: BeforeUnloadEvent): void => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [unsent]);

  const told = useMemo(
    () => snapshot && withOwnTells(snapshot.state, sendings, snapshot.you, heard.skew, clock.now()),
    [snapshot, sendings, heard.skew, clock],
  );

  if (!snapshot || !told || heard.status === 'refused') return <>{meanwhile(heard)}</>;

  const view: BuildView = {
    build,
    linkKey,
    secret,
    state: snapshot.state,
    told,
    forecast: snapshot.forecast,
    you: snapshot.you,
    heardAt: heard.heardAt === null ? null : heard.heardAt + heard.skew,
    online: heard.status === 'live',
    now,
    skew: heard.skew,
    send: sender.send,
    sendings,
    dismiss: sender.dismiss,
    takeBack: sender.takeBack,
    api,
    jobs: heard.jobs,
    offer: snapshot.offer,
  };
  return <BuildContext value={view}>{children}</BuildContext>;
}
