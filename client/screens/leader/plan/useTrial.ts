import { useCallback, useRef, useState } from 'react';
import type { Change } from '#domain/tasks/change.ts';
import type { Proposal, RefusalReply } from '#shared/wire.ts';
import { usePorts } from '../../../data/ports/ports.ts';
import { useBuild } from '../../../data/useBuild.ts';

/** How a plan on trial stands. */
export type TrialState =
  | { readonly step: 'none' }
  | { readonly step: 'planning'; readonly id: string }
  | { readonly step: 'made'; readonly proposal: Proposal }
  | { readonly step: 'refused'; readonly refusal: RefusalReply }
  | { readonly step: 'unreachable' }
  | { readonly step: 'stopped' };

export type Trial = {
  readonly state: TrialState;
  readonly plan: (changes: readonly Change[]) => Promise<void>;
  /** Stops the planning, or forgets the plan that was made. */
  readonly drop: () => void;
  /** Takes the plan made off the page once it is accepted, and the changes with it. */
  readonly accepted: () => void;
};

/** A plan takes a second; a large table may take a good deal more. */
const patience = 120_000;

/** Asks for a plan on trial, recorded nowhere until it is accepted. `onAccepted` hears when it was. */
export function useTrial(onAccepted: () => void): Trial {
  const { api, build } = useBuild();
  const { ids } = usePorts();
  const [state, setState] = useState<TrialState>({ step: 'none' });
  const current = useRef('');

  const plan = useCallback(
    async (changes: readonly Change[]) => {
      const id = ids.mint();
      current.current = id;
      setState({ step: 'planning', id });
      const body = { proposal: id, changes };
      const answer = await api.post<Proposal>(`/api/builds/${build}/proposals`, body, patience);
      // Stopped meanwhile, or asked for again: this answer is of no use.
      if (current.current !== id) return;
      if (answer.kind === 'ok') setState({ step: 'made', proposal: answer.value });
      else if (answer.kind === 'refused') setState({ step: 'refused', refusal: answer.refusal });
      else setState({ step: 'unreachable' });
    },
    [api, build, ids],
  );

  const drop = useCallback(() => {
    const id = current.current;
    current.current = '';
    setState((before) => ({ step: before.step === 'planning' ? 'stopped' : 'none' }));
    if (id !== '') void api.remove(`/api/builds/${build}/proposals/${id}`);
  }, [api, build]);

  const accepted = useCallback(() => {
    current.current = '';
    setState({ step: 'none' });
    onAccepted();
  }, [onAccepted]);

  return { state, plan, drop, accepted };
}
