import type { Seen } from '#domain/forecast/moves/seen.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { seenNow } from '#domain/progress/views/seenNow.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Clock } from '../ports.ts';
import type { Planner } from '../workers/planner.ts';
import { forecastJob, whyNoForecast } from './forecastJob.ts';
import { ForecastLog } from './forecastLog.ts';
import { forecastInHundredths } from './hundredths.ts';
import type { LiveBuild } from './liveBuild.ts';
import { MoveWatch, type MoveWatchOptions } from './moveWatch.ts';
import { sseEvent } from './sse.ts';

/** `runs` are of one forecast; of what failed beside the record `onFailure` is told: nobody's request waits for it. */
export type ForecasterOptions = MoveWatchOptions & {
  /** Milliseconds to wait for more entries before a forecast is begun. */
  readonly wait: number;
};

/** Runs of each of the forecasts that explain a move: they are paired, so that fewer do. */
const runsToExplain = 1000;

/** Milliseconds after which a forecast "from now" no longer is one. */
const oldAfter = 60_000;

/** The parts of a build's state that a forecast hangs on. */
const matters = [
  'work',
  'plan',
  'tasks',
  'crews',
  'loads',
  'start',
  'askedFor',
  'halt',
  'doubt',
] as const;

/**
 * Keeps the forecast of one build up to date: one at a time, the latest state wins, and each that is sent up is kept
 * beside the record.
 */
export class Forecaster {
  readonly #live: LiveBuild;
  /** The forecasts told so far, and what moved them. */
  readonly log: ForecastLog;
  /** Looks at what moved them. */
  readonly moves: MoveWatch;
  readonly #planner: Planner;
  readonly #clock: Clock;
  readonly #options: ForecasterOptions;
  readonly #stop = new AbortController();
  #frame: ForecastFrame | null = null;
  #timer: NodeJS.Timeout | null = null;
  #running = false;
  #again = false;

  constructor(
    live: LiveBuild,
    ledger: Ledger,
    planner: Planner,
    clock: Clock,
    options: ForecasterOptions,
  ) {
    this.#live = live;
    this.log = new ForecastLog(live.build, ledger);
    this.moves = new MoveWatch(live, this.log, ledger, planner, {
      ...options,
      runs: Math.min(options.runs, runsToExplain),
    });
    this.#planner = planner;
    this.#clock = clock;
    this.#options = options;
    live.onChange((before, after) => {
      if (matters.some((part) => before[part] !== after[part])) this.refresh();
    });
  }

  /** The last forecast; null before the first. */
  get frame(): ForecastFrame | null {
    return this.#frame;
  }

  /** Forecasts again, after a short wait for more news. */
  refresh(): void {
    if (this.#running) this.#again = true;
    if (this.#running || this.#timer || this.#stop.signal.aborted) return;
    this.#timer = setTimeout(() => {
      this.#timer = null;
      void this.#run();
    }, this.#options.wait);
    this.#timer.unref();
  }

  /** Forecasts again when the last forecast has aged: time passes without entries too, and late work is late. */
  freshen(): void {
    const now = this.#clock.now().getTime();
    if (this.#frame === null || now - Date.parse(this.#frame.at) >= oldAfter) this.refresh();
  }

  stop(): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.moves.stop();
    this.#stop.abort();
  }

  async #run(): Promise<void> {
    this.#running = true;
    this.#again = false;
    try {
      const { frame, seen } = await this.#make(this.#live.state);
      if (!this.#stop.signal.aborted) await this.#send(frame, seen);
    } catch (error) {
      if (!this.#stop.signal.aborted) this.#options.onFailure(error);
    }
    this.#running = false;
    if (this.#again) this.refresh();
  }

  async #make(
    state: BuildState,
  ): Promise<{ readonly frame: ForecastFrame; readonly seen: Seen | null }> {
    const at = this.#clock.now().toISOString();
    const { number } = state;
    const why = whyNoForecast(state);
    const { plan } = state;
    if (why !== null || plan === null) {
      return { frame: { number, at, forecast: null, why }, seen: null };
    }
    const seen = seenNow(state, plan, at);
    const job = forecastJob(this.#live.build, state, seen, this.#options.runs);
    const { signal } = this.#stop;
    const forecast = await this.#planner.forecast(job, { signal });
    return { frame: { number, at, forecast: forecastInHundredths(forecast), why: null }, seen };
  }

  async #send(frame: ForecastFrame, seen: Seen | null): Promise<void> {
    this.#frame = frame;
    this.#live.feeds.send(sseEvent('forecast', frame));
    if (seen === null) return;
    await this.log.keepFrame(frame);
    this.moves.told({ frame, seen });
  }
}
