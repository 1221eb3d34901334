import type { Seen } from '#domain/forecast/moves/seen.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import type { ForecastMove } from '#shared/wireForecast.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Planner } from '../workers/planner.ts';
import { seedOf } from './forecastJob.ts';
import type { ForecastLog } from './forecastLog.ts';
import { hundredths } from './hundredths.ts';
import type { LiveBuild } from './liveBuild.ts';
import { stateAt } from './stateAt.ts';

/** A forecast that was told, and what it looked at. */
export type Look = { readonly frame: Pick<ForecastFrame, 'number' | 'at'>; readonly seen: Seen };

export type MoveWatchOptions = {
  readonly runs: number;
  /** Milliseconds of quiet after a forecast before it is asked what moved it: boards come first. */
  readonly moveWait: number;
  readonly onFailure: (error: unknown) => void;
};

/** A move by less than this is no news. Minutes. */
const worthAWord = 1;

/**
 * Finds out what moved the forecast of one build: after each forecast against the last one that news was told of, so
 * that many small moves of one kind become one, and on demand against the start. What was looked at is taken from the
 * record again after a restart.
 */
export class MoveWatch {
  readonly #live: LiveBuild;
  readonly #log: ForecastLog;
  readonly #ledger: Ledger;
  readonly #planner: Planner;
  readonly #options: MoveWatchOptions;
  readonly #stop = new AbortController();
  #latest: Look | null = null;
  #basis: Look | null = null;
  #sinceStart: {
    readonly of: Look;
    readonly confidence: number;
    readonly move: Promise<ForecastMove | null>;
  } | null = null;
  #timer: NodeJS.Timeout | null = null;
  #running = false;

  constructor(
    live: LiveBuild,
    log: ForecastLog,
    ledger: Ledger,
    planner: Planner,
    options: MoveWatchOptions,
  ) {
    this.#live = live;
    this.#log = log;
    this.#ledger = ledger;
    this.#planner = planner;
    this.#options = options;
  }

  /** A forecast was told and kept: looks after a while at what moved it. */
  told(look: Look): void {
    this.#latest = look;
    this.#later();
  }

  /**
   * What moved the opening since the start of the build, or since the first forecast where that is later; null when there
   * is only one. Rejects when it is stopped or the storage fails.
   */
  sinceStart(): Promise<ForecastMove | null> {
    const of = this.#latest;
    const { confidence } = this.#live.state;
    if (of === null) return Promise.resolve(null);
    const known = this.#sinceStart;
    if (known?.of === of && known.confidence === confidence) return known.move;
    const move = this.#fromStart(of, confidence);
    this.#sinceStart = { of, confidence, move };
    move.catch(() => {
      if (this.#sinceStart?.move === move) this.#sinceStart = null;
    });
    return move;
  }

  stop(): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#stop.abort();
  }

  #later(): void {
    if (this.#running || this.#timer || this.#stop.signal.aborted) return;
    this.#timer = setTimeout(() => {
      this.#timer = null;
      void this.#look();
    }, this.#options.moveWait);
    this.#timer.unref();
  }

  async #look(): Promise<void> {
    const after = this.#latest;
    if (after === null) return;
    this.#running = true;
    try {
      const before = this.#basis ?? (await this.#lastMarked());
      if (before === null || same(before.frame, after.frame)) this.#basis = after;
      else await this.#compare(before, after);
    } catch (error) {
      if (!this.#stop.signal.aborted) this.#options.onFailure(error);
    }
    this.#running = false;
    if (this.#latest !== after) this.#later();
  }

  async #compare(before: Look, after: Look): Promise<void> {
    const { confidence } = this.#live.state;
    const points = await this.#log.points(confidence);
    const promised = (look: Look) => points.findLast((point) => same(point, look.frame))?.promised;
    const by = (promised(after) ?? 0) - (promised(before) ?? 0);
    this.#basis = before;
    if (Math.abs(by) < worthAWord && !restated(before.seen, after.seen)) return;
    const move = await this.#between(before, after, confidence);
    this.#basis = after;
    const most = Math.max(0, ...[move, ...move.causes].map(({ minutes }) => Math.abs(minutes)));
    if (most >= worthAWord) await this.#log.keepMove(move);
  }

  async #between(before: Look, after: Look, confidence: number): Promise<ForecastMove> {
    const { runs } = this.#options;
    const job = {
      before: before.seen,
      after: after.seen,
      confidence,
      runs,
      seed: seedOf(this.#live.build),
    };
    const moved = await this.#planner.moved(job, { signal: this.#stop.signal });
    const { number, at } = after.frame;
    return {
      number,
      at,
      since: { number: before.frame.number, at: before.frame.at },
      confidence,
      minutes: hundredths(moved.minutes),
      causes: moved.causes.map((cause) => ({ ...cause, minutes: hundredths(cause.minutes) })),
    };
  }

  async #fromStart(of: Look, confidence: number): Promise<ForecastMove | null> {
    const points = await this.#log.points(confidence);
    const { start } = this.#live.state;
    const begun = points.findLast(({ at }) => Date.parse(at) <= Date.parse(start));
    const first = begun && begun.at < of.frame.at ? begun : points[0];
    if (!first || first.at >= of.frame.at) return null;
    const before = await this.#lookedAt(first);
    return before && this.#between(before, of, confidence);
  }

  /** The forecast of the last move kept; before the first, the first that was told. */
  async #lastMarked(): Promise<Look | null> {
    const last = (await this.#log.moves()).at(-1);
    const first = (await this.#log.points(this.#live.state.confidence))[0];
    const frame = last ?? first;
    return frame ? this.#lookedAt(frame) : null;
  }

  async #lookedAt({ number, at }: Look['frame']): Promise<Look | null> {
    const state: BuildState = await stateAt(this.#ledger, this.#live.build, number);
    return state.plan && { frame: { number, at }, seen: seenNow(state, state.plan, at) };
  }
}

type Told = Look['frame'];

function same(one: Told, other: Told): boolean {
  return one.number === other.number && one.at === other.at;
}

/** Whether something was decided or told anew that is worth a word even where its effects cancel out. */
function restated(before: Seen, after: Seen): boolean {
  const stated = ({ work, plan, doubts }: Seen) =>
    JSON.stringify([plan.minutesToOpen, plan.tasks.length, work.loads, work.crews, doubts.doubt]);
  return stated(before) !== stated(after);
}
