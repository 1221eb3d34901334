import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Proposal } from '#shared/wire.ts';

/** A plan that a leader may accept: what `accept-plan` will carry into the record, and what the page shows of it. */
export type KeptProposal = {
  readonly build: string;
  readonly basis: number;
  readonly work: Work;
  readonly plan: Plan;
  readonly gain: string;
  readonly shown: Proposal;
};

/** A proposal being made: `stop` gives it up, `take` ends its search with the best plan so far. */
export type Making = { readonly stop: AbortController; readonly take: AbortController };

/** Proposals of a build that are worth keeping: a leader compares a handful, not a hundred. */
const room = 20;

/**
 * Proposals waiting for a leader's yes, and those still being made. In memory only: one that is lost by a restart is
 * asked for again.
 */
export class Proposals {
  readonly #kept = new Map<string, KeptProposal>();
  readonly #making = new Map<string, Making & { readonly build: string }>();

  find(build: string, id: string): KeptProposal | null {
    const kept = this.#kept.get(id);
    return kept?.build === build ? kept : null;
  }

  /** Marks a proposal as being made; null when the id is taken. The caller says `end` when it is over. */
  begin(build: string, id: string): Making | null {
    if (this.#kept.has(id) || this.#making.has(id)) return null;
    const making = { build, stop: new AbortController(), take: new AbortController() };
    this.#making.set(id, making);
    return making;
  }

  /** It is no longer being made, whatever became of it. */
  end(id: string): void {
    this.#making.delete(id);
  }

  keep(id: string, proposal: KeptProposal): void {
    this.#kept.set(id, proposal);
    const ofBuild = [...this.#kept].filter(([, { build }]) => build === proposal.build);
    for (const [old] of ofBuild.slice(0, -room)) this.#kept.delete(old);
  }

  /** Ends the search for it with the best plan found so far. False when none of that id is being made. */
  take(build: string, id: string): boolean {
    const making = this.#making.get(id);
    if (making?.build !== build) return false;
    making.take.abort();
    return true;
  }

  /** Forgets a proposal, and stops it when it is still being made. False when there is none of that id. */
  drop(build: string, id: string): boolean {
    const making = this.#making.get(id);
    if (making?.build === build) {
      making.stop.abort();
      return true;
    }
    return this.find(build, id) !== null && this.#kept.delete(id);
  }
}
