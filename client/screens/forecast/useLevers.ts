import { useCallback, useRef, useState } from 'react';
import type { RefusalReply } from '#shared/wire.ts';
import type { LeverSizesWanted, MovesReply, MovesRequest } from '#shared/wireForecast.ts';
import { usePorts } from '../../data/ports/ports.ts';
import { useBuild } from '../../data/useBuild.ts';

/** How the question "what would move it" stands. The last answer stays in sight while it is asked again. */
export type LeversState =
  | { readonly step: 'none' | 'here' | 'stopped' | 'unreachable' }
  | { readonly step: 'asking'; readonly job: string }
  | { readonly step: 'refused'; readonly refusal: RefusalReply };

export type Levers = {
  readonly state: LeversState;
  readonly reply: MovesReply | null;
  readonly ask: (sizes: LeverSizesWanted) => Promise<void>;
  readonly stop: () => void;
};

/** Some dozen simulations: seconds on a busy machine. Milliseconds. */
const patience = 120_000;

export function useLevers(): Levers {
  const { api, build } = useBuild();
  const { ids } = usePorts();
  const [state, setState] = useState<LeversState>({ step: 'none' });
  const [reply, setReply] = useState<MovesReply | null>(null);
  const current = useRef('');

  const ask = useCallback(
    async (sizes: LeverSizesWanted) => {
      const job = ids.mint();
      current.current = job;
      setState({ step: 'asking', job });
      const request: MovesRequest = { job, sizes };
      const path = `/api/builds/${build}/forecast/moves`;
      const answer = await api.post<MovesReply>(path, request, patience);
      if (current.current !== job) return;
      if (answer.kind === 'ok') {
        setReply(answer.value);
        setState({ step: 'here' });
      } else if (answer.kind === 'refused') setState({ step: 'refused', refusal: answer.refusal });
      else setState({ step: 'unreachable' });
    },
    [api, build, ids],
  );

  const stop = useCallback(() => {
    const job = current.current;
    current.current = '';
    setState({ step: 'stopped' });
    if (job !== '') void api.remove(`/api/builds/${build}/forecast/moves/${job}`);
  }, [api, build]);

  return { state, reply, ask, stop };
}
