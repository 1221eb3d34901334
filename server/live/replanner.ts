import type { BuildState } from '#domain/progress/state.ts';
import { workAsTold } from '#domain/progress/views/asTold.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import { isWorthOffering, offerOf } from '#domain/schedule/improve/offer.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { OfferFrame } from '#shared/wirePlan.ts';
import type { Clock, Ids } from '../ports.ts';
import type { Planner } from '../workers/planner.ts';
import type { Searcher } from '../workers/searcher.ts';
import type { LiveBuild } from './liveBuild.ts';
import { makeProposal } from './makeProposal.ts';
import type { Proposals } from './proposals.ts';
import { sseEvent } from './sse.ts';

export type ReplannerOptions = {
  readonly runs: number;
  /** Seconds that one look may search. */
  readonly seconds: number;
  /** Milliseconds between two looks at a build that changes. */
  readonly every: number;
  readonly onFailure: (error: unknown) => void;
};

export type ReplannerParts = {
  readonly searcher: Searcher;
  readonly planner: Planner;
  readonly proposals: Proposals;
  readonly clock: Clock;
  readonly ids: Ids;
};

/** The parts of a build's state that move a plan. */
const matters = ['work', 'plan', 'tasks', 'crews', 'loads'] as const;

/** Time alone makes work late: after so many looks' time without news a look is taken all the same. */
const quietLooks = 5;

/** Minutes by which a plan must better the one that was declined before it is offered again. */
const betterThanDeclined = 5;

/**
 * When a build has drifted from its plan, works out a fresh one in the background and offers it to the leader if the
 * gain is worth the orders it changes. Never applies it. Looks only while a leader's page is open, nothing is halted and
 * nobody asks for a plan; an offer goes when what it was made on has changed, and stays away when it was declined.
 */
export class Replanner {
  readonly #live: LiveBuild;
  readonly #parts: ReplannerParts;
  readonly #options: ReplannerOptions;
  #seen: BuildState | null = null;
  #lookedAt = Number.NEGATIVE_INFINITY;
  #look: AbortController | null = null;
  #offer: OfferFrame = null;
  #gain = 0;
  /** Every proposal offered for the plan in force: a page may still show one that a fresher has replaced. */
  readonly #offered = new Set<string>();
  #declined: { readonly plan: Plan | null; readonly gain: number } | null = null;

  constructor(live: LiveBuild, parts: ReplannerParts, options: ReplannerOptions) {
    this.#live = live;
    this.#parts = parts;
    this.#options = options;
    live.onChange((before, after) => {
      if (before.plan === after.plan && before.workNumber === after.workNumber) return;
      this.#offered.clear();
      this.pause();
      this.#show(null);
    });
  }

  /** The offer that stands; null when none does. */
  get offer(): OfferFrame {
    return this.#offer;
  }

  /** Takes a look when one is due. */
  look(): void {
    if (this.#look || !this.#isDue()) return;
    void this.#run();
  }

  /** Gives up a look under way: somebody needs the searcher, or it looks at what no longer is. */
  pause(): void {
    this.#look?.abort();
    this.#look = null;
  }

  /** The leader does not want this proposal: the offer goes, and one like it is not made again. */
  decline(proposal: string): void {
    if (!this.#offered.has(proposal)) return;
    this.#declined = { plan: this.#live.state.plan, gain: this.#gain };
    this.#show(null);
  }

  #isDue(): boolean {
    const { state, feeds } = this.#live;
    if (!feeds.has('leader') || state.plan === null || state.halt !== null) return false;
    if (openedOf(state).open) return false;
    const since = this.#parts.clock.now().getTime() - this.#lookedAt;
    const changed = matters.some((part) => this.#seen?.[part] !== state[part]);
    // An offer that stands is not taken from under the leader's finger for every tick.
    const soon = changed && this.#offer === null;
    return since >= this.#options.every * (soon ? 1 : quietLooks);
  }

  async #run(): Promise<void> {
    const look = new AbortController();
    this.#look = look;
    const { state } = this.#live;
    this.#seen = state;
    this.#lookedAt = this.#parts.clock.now().getTime();
    try {
      const offer = await this.#fresh(state, look.signal);
      if (!look.signal.aborted) this.#show(offer);
    } catch (error) {
      if (!look.signal.aborted) this.#options.onFailure(error);
    }
    if (this.#look === look) this.#look = null;
  }

  async #fresh(state: BuildState, signal: AbortSignal): Promise<OfferFrame> {
    const { searcher, planner, proposals, clock, ids } = this.#parts;
    const { runs, seconds } = this.#options;
    const now = clock.now().toISOString();
    const accepted = state.plan;
    if (accepted === null) return null;
    const work = workAsTold(state);
    const past = pastOf(state, now);
    const { shape } = accepted;
    const found = await searcher.search({ work, past, shape, accepted, seconds }, { signal });
    if (!found.ok) return null;
    const weighed = offerOf({ work, plan: found.value }, { work, plan: accepted }, past);
    if (!isWorthOffering(weighed) || this.#wasDeclined(accepted, weighed.gain)) return null;
    const id = ids.long();
    const find = async () => found;
    const made = await makeProposal(
      { live: this.#live, planner, runs },
      { id, changes: [], now, find },
      { signal },
    );
    if (!made.ok || signal.aborted) return null;
    proposals.keep(id, made.value);
    this.#gain = weighed.gain;
    this.#offered.add(id);
    return { proposal: id, basis: made.value.basis, gain: made.value.gain };
  }

  #wasDeclined(accepted: Plan, gain: number): boolean {
    const declined = this.#declined;
    return declined?.plan === accepted && gain < declined.gain + betterThanDeclined;
  }

  #show(offer: OfferFrame): void {
    if (this.#offer === null && offer === null) return;
    this.#offer = offer;
    this.#live.feeds.sendTo('leader', sseEvent('offer', offer));
  }
}
