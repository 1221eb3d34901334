import type { Static } from 'typebox';
import type { Author } from '#domain/progress/command.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { WireKind, wireBodies } from '#shared/wireBodies.ts';

/** One command that a line may mean: what Enter would send. */
export type Meant = {
  [Kind in WireKind]: { readonly kind: Kind; readonly body: Static<(typeof wireBodies)[Kind]> };
}[WireKind];

/** One way to understand a line, in words, before anything is sent. */
export type Reading = {
  /** What the record would say. */
  readonly sentence: string;
  /** What to send; null when it cannot be sent, and `sentence` says why. */
  readonly meant: Meant | null;
  /** Higher is likelier. */
  readonly score: number;
  readonly by: string | null;
  readonly at: number | null;
  /** The rule it would break, in words; it can be sent all the same, because a fact is a fact. */
  readonly warning: string | null;
  /** The line did not say what happened: it is offered, never sent by Enter alone. */
  readonly guess: boolean;
};

/** What readings are made from. */
export type Board = {
  readonly state: BuildState;
  /** Server-corrected milliseconds. */
  readonly now: number;
  /** Whose link this is: only their own reports are theirs to take back. */
  readonly you: Author;
};

/** A way to understand a line before the time and the speaker are put to it. */
export type Idea = {
  readonly meant: Meant | null;
  readonly score: number;
  /** Whose word it is: the crew's chief is named unless the line names another. */
  readonly crew?: string;
  /** Who said it, where the words of the line name somebody: "left 57 done by Okoro". */
  readonly by?: string;
  /** More than one thing may be meant: it has to be chosen. */
  readonly guess?: boolean;
  /** What happened was not said at all: a guess, and none that breaks a rule is offered. */
  readonly unsaid?: boolean;
  /** Said instead of the record's sentence: why this cannot be sent. */
  readonly instead?: string;
};
