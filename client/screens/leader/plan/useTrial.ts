import { useCallback, useRef, useState } from 'react';
import type { Change } from '#domain/tasks/change.ts';
import type { Proposal, RefusalReply } from '#shared/wire.ts';
import type { Answer } from '../../../data/api.ts';
import { usePorts } from '../../../data/ports/ports.ts';
import { useBuild } from '../../../data/useBuild.ts';

/** How a plan on trial stands. */
export type TrialState =
  | { readonly step: 'none' }
  | { readonly step: 'planning'; readonly id: string; readonly search: boolean }
  | { readonly step: 'made'; readonly proposal: Proposal }
  | { readonly step: 'refused'; readonly refusal: RefusalReply }
  | { readonly step: 'unreachable' }
  | { readonly step: 'stopped' }
  | { readonly step: 'accepted' };

export type Trial = {
  readonly state: TrialState;
  readonly plan: (changes: readonly Change[]) => Promise<void>;
  /** Searches for so long as a better plan may be found, with news on the way. */
  readonly search: (changes: readonly Change[]) => Promise<void>;
  /** Ends the search with the best plan so far. */
  readonly take: () => void;
  /** Puts a plan beside the one in force that the server has made already. */
  readonly show: (proposal: string) => Promise<void>;
  /** Stops the planning, or forgets the plan that was made. */
  readonly drop: () => void;
  /** Takes the plan made off the page once it is accepted, and the changes with it. */
  readonly accepted: () => void;
};

/** A plan takes a second; a large table may take a good deal more, and a search as long as it is given. */
const patience = 120_000;

/** Seconds that a search for a better plan is given. */
const searchSeconds = 90;

/** Asks for a plan on trial, recorded nowhere until it is accepted. `onAccepted` hears when it was. */
export function useTrial(onAccepted: () => void): Trial {
  const { api, build } = useBuild();
  const { ids } = usePorts();
  const [state, setState] = useState<TrialState>({ step: 'none' });
  const current = useRef('');

  const path = `/api/builds/${build}/proposals`;

  const follow = useCallback(async (id: string, asked: Promise<Answer<Proposal>>) => {
    current.current = id;
    const answer = await asked;
    // Stopped meanwhile, or asked for again: this answer is of no use.
    if (current.current !== id) return;
    if (answer.kind === 'ok') setState({ step: 'made', proposal: answer.value });
    else if (answer.kind === 'refused') setState({ step: 'refused', refusal: answer.refusal });
    else setState({ step: 'unreachable' });
  }, []);

  const ask = useCallback(
    async (changes: readonly Change[], seconds: number | null) => {
      const id = ids.mint();
      setState({ step: 'planning', id, search: seconds !== null });
      const body = { proposal: id, changes, ...(seconds !== null && { seconds }) };
      await follow(id, api.post<Proposal>(path, body, patience));
    },
    [api, ids, path, follow],
  );
  const plan = useCallback((changes: readonly Change[]) => ask(changes, null), [ask]);
  const search = useCallback((changes: readonly Change[]) => ask(changes, searchSeconds), [ask]);
  const show = useCallback(
    (proposal: string) => follow(proposal, api.get<Proposal>(`${path}/${proposal}`)),
    [api, path, follow],
  );
  const take = useCallback(() => {
    void api.post(`${path}/${current.current}/take`, {});
  }, [api, path]);

  const drop = useCallback(() => {
    const id = current.current;
    current.current = '';
    setState((before) => ({ step: before.step === 'planning' ? 'stopped' : 'none' }));
    if (id !== '') void api.remove(`${path}/${id}`);
  }, [api, path]);

  const accepted = useCallback(() => {
    current.current = '';
    setState({ step: 'accepted' });
    onAccepted();
  }, [onAccepted]);

  return { state, plan, search, take, show, drop, accepted };
}
