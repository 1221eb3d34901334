import type { BuildState } from '#domain/progress/state.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Clock } from '../ports.ts';
import type { Planner } from '../workers/planner.ts';
import { forecastJob, whyNoForecast } from './forecastJob.ts';
import { forecastInHundredths } from './hundredths.ts';
import type { LiveBuild } from './liveBuild.ts';
import { sseEvent } from './sse.ts';

export type ForecasterOptions = {
  readonly runs: number;
  /** Milliseconds to wait for more entries before a forecast is begun. */
  readonly wait: number;
  /** Told of what failed beside the record: nobody's request waits for it. */
  readonly onFailure: (error: unknown) => void;
};

/** Milliseconds after which a forecast "from now" no longer is one. */
const oldAfter = 60_000;

/** The parts of a build's state that a forecast hangs on. */
const matters = ['work', 'plan', 'tasks', 'crews', 'loads', 'start', 'askedFor', 'halt'] as const;

/**
 * Keeps the forecast of one build up to date: one at a time, the latest state wins, and each that is sent up is kept
 * beside the record.
 */
export class Forecaster {
  readonly #live: LiveBuild;
  readonly #ledger: Ledger;
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
    this.#ledger = ledger;
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
    this.#stop.abort();
  }

  async #run(): Promise<void> {
    this.#running = true;
    this.#again = false;
    try {
      const frame = await this.#make(this.#live.state);
      if (!this.#stop.signal.aborted) await this.#send(frame);
    } catch (error) {
      if (!this.#stop.signal.aborted) this.#options.onFailure(error);
    }
    this.#running = false;
    if (this.#again) this.refresh();
  }

  async #make(state: BuildState): Promise<ForecastFrame> {
    const at = this.#clock.now().toISOString();
    const { number } = state;
    const why = whyNoForecast(state);
    const { plan } = state;
    if (why !== null || plan === null) return { number, at, forecast: null, why };
    const job = forecastJob(this.#live.build, state, plan, at, this.#options.runs);
    const { signal } = this.#stop;
    const forecast = await this.#planner.forecast(job, { signal });
    return { number, at, forecast: forecastInHundredths(forecast), why: null };
  }

  async #send(frame: ForecastFrame): Promise<void> {
    this.#frame = frame;
    this.#live.feeds.send(sseEvent('forecast', frame));
    if (frame.forecast === null) return;
    const { number, at } = frame;
    await this.#ledger.keepTold(this.#live.build, { number, at, text: JSON.stringify(frame) });
  }
}
