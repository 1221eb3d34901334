import { createContext, useContext } from 'react';
import type { Author } from '#domain/progress/command.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { ForecastFrame, ProgressFrame } from '#shared/wire.ts';
import type { OfferFrame } from '#shared/wirePlan.ts';
import type { Api } from './api.ts';
import type { Send, Sender, Sending } from './sender.ts';

/** What a page knows of its build, and how it speaks. */
export type BuildView = {
  /** Id of the build. */
  readonly build: string;
  /** Name under which the device keeps things of this link. */
  readonly linkKey: string;
  readonly secret: string;
  /** What the server has confirmed. */
  readonly state: BuildState;
  /** The same with this device's own unconfirmed tells on top. */
  readonly told: BuildState;
  readonly forecast: ForecastFrame | null;
  readonly you: Author;
  /** Server-corrected milliseconds when anything was last heard. */
  readonly heardAt: number | null;
  /** The feed is open. */
  readonly online: boolean;
  /** Server-corrected milliseconds; moves every few seconds. For a second hand use `useNow`. */
  readonly now: number;
  /** Milliseconds to add to the device's clock to get the server's. */
  readonly skew: number;
  readonly send: Send;
  /** Commands on their way and what became of the last ones, oldest first. */
  readonly sendings: readonly Sending[];
  readonly dismiss: Sender['dismiss'];
  readonly takeBack: Sender['takeBack'];
  readonly api: Api;
  /** Long jobs of the server under way. */
  readonly jobs: Readonly<Record<string, Omit<ProgressFrame, 'job'>>>;
  /** To leaders: a plan that the server found worth a look. */
  readonly offer?: OfferFrame | undefined;
};

export const BuildContext = createContext<BuildView | null>(null);

/** The build of this page. Only inside `BuildProvider`. */
export function useBuild(): BuildView {
  const view = useContext(BuildContext);
  if (!view) throw new Error('useBuild stands outside BuildProvider');
  return view;
}
