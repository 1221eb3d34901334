import type { Forecast } from '#domain/forecast/forecast.ts';
import { openingBy } from '#domain/forecast/moves/seen.ts';
import type { ForecastFrame } from '#shared/wire.ts';
import type { ForecastMove, HistoryPoint } from '#shared/wireForecast.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { frameText, moveText, readTold } from './toldTexts.ts';

/** All that is kept of a build: a forecast a minute makes some hundreds in a long night. */
const allTold = 100_000;

/** What is remembered of one forecast that was told. */
type Remembered = Pick<Forecast, 'p10' | 'p50' | 'p80' | 'p90' | 'percentiles'> & {
  readonly number: number;
  readonly at: string;
  readonly chance: number | null;
};

/**
 * The forecasts of one build as they were told, and what moved them: kept beside the record, read from there once, and
 * remembered in short.
 */
export class ForecastLog {
  readonly #build: string;
  readonly #ledger: Ledger;
  readonly #forecasts: Remembered[] = [];
  readonly #moves: ForecastMove[] = [];
  #read = false;
  #line: Promise<unknown> = Promise.resolve();

  constructor(build: string, ledger: Ledger) {
    this.#build = build;
    this.#ledger = ledger;
  }

  /** Keeps a forecast that was sent up. Rejects when the storage fails. */
  keepFrame(frame: ForecastFrame): Promise<void> {
    return this.#inTurn(async () => {
      const { number, at } = frame;
      await this.#ledger.keepTold(this.#build, { number, at, text: frameText(frame) });
      if (this.#read) this.#remember(frame);
    });
  }

  /** Keeps what moved the forecast. Rejects when the storage fails. */
  keepMove(move: ForecastMove): Promise<void> {
    return this.#inTurn(async () => {
      const { number, at } = move;
      await this.#ledger.keepTold(this.#build, { number, at, text: moveText(move) });
      if (this.#read) this.#moves.push(move);
    });
  }

  /** Every forecast told, oldest first, each with the opening that it promises at this confidence. */
  async points(confidence: number): Promise<HistoryPoint[]> {
    await this.#inTurn(() => this.#readAll());
    return this.#forecasts.map(({ percentiles, ...point }) => ({
      ...point,
      promised: openingBy({ percentiles }, confidence),
    }));
  }

  /** Every move worth a word, oldest first. */
  async moves(): Promise<readonly ForecastMove[]> {
    await this.#inTurn(() => this.#readAll());
    return this.#moves;
  }

  async #readAll(): Promise<void> {
    if (this.#read) return;
    for (const { text } of await this.#ledger.told(this.#build, allTold)) {
      const told = readTold(text);
      if (told.kind === 'move') this.#moves.push(told.move);
      else this.#remember(told.frame);
    }
    this.#read = true;
  }

  #remember({ number, at, forecast }: ForecastFrame): void {
    if (forecast === null) return;
    const { p10, p50, p80, p90, percentiles, chanceBy } = forecast;
    const chance = chanceBy?.chance ?? null;
    this.#forecasts.push({ number, at, p10, p50, p80, p90, percentiles, chance });
  }

  /** Reading and keeping never overlap, so that nothing is forgotten between the two. */
  #inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
    const turn = this.#line.then(work);
    this.#line = turn.catch(() => {});
    return turn;
  }
}
