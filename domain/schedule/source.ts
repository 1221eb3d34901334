import type { BankSide } from './crossing.ts';

/** Part of what a task takes over: so many people or so much room, free since `free`, last held by the tasks `last`. */
export type Share = {
  readonly amount: number;
  /** Seconds. */
  readonly free: number;
  /** Seconds; when these people came to the crew: nothing makes them free before. */
  readonly since: number;
  /** Numbers of tasks; empty when nobody has held it yet. */
  readonly last: readonly number[];
  /** Where they last were. */
  readonly bank: BankSide;
};

/** What a task asks of a source. */
export type Wish = {
  /** Number of the task. */
  readonly task: number;
  readonly amount: number;
  readonly keepOff: boolean;
  /** Where they are wanted. */
  readonly bank: BankSide;
};

/** The people of a crew or the room of a zone while a schedule is gone through in order of start. */
export type Source = {
  /** When the wish can be met at the earliest. */
  freeAt(wish: Wish): number;
  /**
   * Meets the wish from `start` to `finish` and tells what it took over. `freedBy` are tasks that must be finished
   * before this one anyway: what they leave costs no new hand-over.
   */
  take(wish: Wish, start: number, finish: number, freedBy: ReadonlySet<number>): Share[];
  /** Notes a task at work until `finish`, also where others already hold what it holds. */
  overlay(wish: Wish, finish: number): void;
};
