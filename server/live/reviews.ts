import { type PlayedTask, playedTasks } from '#domain/forecast/after/played.ts';
import { proposals } from '#domain/forecast/after/proposal.ts';
import { reviewOf } from '#domain/forecast/after/review.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import type { ReviewReply } from '#shared/wireReview.ts';
import type { Kits } from '../kits.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { stateAt } from './stateAt.ts';

/** One build as it went, as far as its record went when it was looked at. */
type Went = {
  readonly number: number;
  readonly kit: string | null;
  readonly open: boolean;
  readonly played: readonly PlayedTask[];
};

/** How builds went against their plans, and what that proposes for their kits. What earlier builds told is remembered. */
export class Reviews {
  readonly #ledger: Ledger;
  readonly #kits: Kits;
  readonly #went = new Map<string, Went>();

  constructor(ledger: Ledger, kits: Kits) {
    this.#ledger = ledger;
    this.#kits = kits;
  }

  /**
   * Planned against actual of a build until `now` (ISO 8601 UTC). Minutes are proposed once it is open, from it and from
   * the other open builds of its kit: a build cut short has only told what went quickly.
   */
  async review(build: string, state: BuildState, now: string): Promise<ReviewReply> {
    const own = wentOf(state, now);
    const found = own.kit === null ? undefined : this.#kits.get(own.kit);
    const others = own.open && found ? await this.#others(build, own.kit!, now) : [];
    const shape = state.plan?.shape ?? 'pert';
    const proposed =
      own.open && found ? proposals(found.kit.order, shape, [...others, own.played]) : [];
    return {
      open: own.open,
      kit: own.kit,
      earlier: others.length,
      review: reviewOf(state.name, own.played, state.work.crews, proposed),
    };
  }

  async #others(build: string, kit: string, now: string): Promise<(readonly PlayedTask[])[]> {
    const played: (readonly PlayedTask[])[] = [];
    for (const head of await this.#ledger.heads()) {
      if (head.build === build) continue;
      let went = this.#went.get(head.build);
      if (went?.number !== head.number) {
        went = wentOf(await stateAt(this.#ledger, head.build, head.number), now);
        this.#went.set(head.build, went);
      }
      if (went.kit === kit && went.open) played.push(went.played);
    }
    return played;
  }
}

function wentOf(state: BuildState, now: string): Went {
  const { number, bridge, plan } = state;
  const about = { number, kit: bridge?.kit.name ?? null, open: openedOf(state).open };
  if (plan === null) return { ...about, played: [] };
  const { work, doubts } = seenNow(state, plan, now);
  return { ...about, played: playedTasks(work, plan, doubts.ticks ?? [], doubts) };
}
