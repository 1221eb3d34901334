import type { Ledger } from '../ledger/ledger.ts';
import type { Clock } from '../ports.ts';
import type { Planner } from '../workers/planner.ts';
import { Forecaster, type ForecasterOptions } from './forecaster.ts';
import { LiveBuild } from './liveBuild.ts';
import { Replanner, type ReplannerOptions, type ReplannerParts } from './replanner.ts';
import { sseEvent } from './sse.ts';

/** A build in memory together with whoever forecasts it and looks for a better plan. */
export type Running = {
  readonly live: LiveBuild;
  readonly forecaster: Forecaster;
  readonly replanner: Replanner;
};

/** The builds that somebody has asked for since the server started. */
export class LiveBuilds {
  readonly #ledger: Ledger;
  readonly #planner: Planner;
  readonly #clock: Clock;
  readonly #options: ForecasterOptions;
  readonly #replan: { readonly parts: ReplannerParts; readonly options: ReplannerOptions };
  #searches = 0;
  readonly #running = new Map<string, Running>();

  constructor(
    ledger: Ledger,
    planner: Planner,
    clock: Clock,
    options: ForecasterOptions,
    replan: { readonly parts: ReplannerParts; readonly options: ReplannerOptions },
  ) {
    this.#ledger = ledger;
    this.#planner = planner;
    this.#clock = clock;
    this.#options = options;
    this.#replan = replan;
  }

  /** The build, its record read; null when there is none of that name. */
  async get(build: string): Promise<Running | null> {
    const known = this.#running.get(build);
    if (known) {
      await known.live.ready();
      return known;
    }
    if ((await this.#ledger.head(build)) === null) return null;
    // Somebody else may have come in between.
    const running = this.#running.get(build) ?? this.#start(build);
    await running.live.ready();
    return running;
  }

  #start(build: string): Running {
    const live = new LiveBuild(build, this.#ledger);
    const forecaster = new Forecaster(
      live,
      this.#ledger,
      this.#planner,
      this.#clock,
      this.#options,
    );
    const replanner = new Replanner(live, this.#replan.parts, this.#replan.options);
    const running = { live, forecaster, replanner };
    this.#running.set(build, running);
    return running;
  }

  /** Tells every open page that the server lives, and what its clock says. */
  beat(): void {
    const text = sseEvent('beat', { now: this.#clock.now().toISOString() });
    for (const { live } of this.#running.values()) live.feeds.send(text);
  }

  /** Forecasts again, from now, what somebody watches and nothing was told of lately. */
  freshen(): void {
    for (const { live, forecaster } of this.#running.values()) {
      if (live.feeds.count > 0) forecaster.freshen();
    }
  }

  /** Looks for better plans of builds that have drifted, unless a leader's own search needs the searcher. */
  replan(): void {
    if (this.#searches > 0) return;
    for (const { replanner } of this.#running.values()) replanner.look();
  }

  /** Does a search that a leader waits for: looks in the background give way to it. */
  async searching<Value>(search: () => Promise<Value>): Promise<Value> {
    this.#searches += 1;
    for (const { replanner } of this.#running.values()) replanner.pause();
    try {
      return await search();
    } finally {
      this.#searches -= 1;
    }
  }

  closeFeeds(build: string, link: string): void {
    this.#running.get(build)?.live.feeds.close(link);
  }

  stop(): void {
    for (const { live, forecaster, replanner } of this.#running.values()) {
      forecaster.stop();
      replanner.pause();
      live.feeds.close();
    }
  }
}
