import { createContext, useContext } from 'react';
import type { BuildState } from '#domain/progress/state.ts';
import type { Send } from '../../data/sender.ts';
import { useBuild } from '../../data/useBuild.ts';
import type { Awake } from './useAwake.ts';

/** What every part of one crew's card works with. */
export type Card = {
  readonly crew: string;
  readonly crewName: string;
  readonly fit: number;
  /** The state with this card's own unconfirmed tells. */
  readonly state: BuildState;
  /** Server-corrected milliseconds. */
  readonly now: number;
  readonly awake: boolean;
  readonly press: Awake['press'];
  readonly send: Send;
};

export const CardContext = createContext<Omit<Card, 'state' | 'now' | 'send'> | null>(null);

/** The card of this page. Only inside `ChiefPage`. */
export function useCard(): Card {
  const card = useContext(CardContext);
  const { told, now, send } = useBuild();
  if (!card) throw new Error('useCard stands outside ChiefPage');
  return { ...card, state: told, now, send };
}
