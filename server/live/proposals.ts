import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';

/** A plan that a leader may accept: what `accept-plan` will carry into the record. */
export type KeptProposal = {
  readonly build: string;
  readonly basis: number;
  readonly work: Work;
  readonly plan: Plan;
  readonly gain: string;
};

/** Proposals of a build that are worth keeping: a leader compares a handful, not a hundred. */
const room = 20;

/**
 * Proposals waiting for a leader's yes, and those still being made. In memory only: one that is lost by a restart is
 * asked for again.
 */
export class Proposals {
  readonly #kept = new Map<string, KeptProposal>();
  readonly #making = new Map<string, { readonly build: string; readonly stop: AbortController }>();

  find(build: string, id: string): KeptProposal | null {
    const kept = this.#kept.get(id);
    return kept?.build === build ? kept : null;
  }

  /** Marks a proposal as being made; null when the id is taken. The caller says `end` when it is over. */
  begin(build: string, id: string): AbortController | null {
    if (this.#kept.has(id) || this.#making.has(id)) return null;
    const stop = new AbortController();
    this.#making.set(id, { build, stop });
    return stop;
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
