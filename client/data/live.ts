import { applyDelta } from '#shared/applyDelta.ts';
import type {
  BeatFrame,
  DeltaFrame,
  ForecastFrame,
  ProgressFrame,
  RefusalReply,
  Snapshot,
} from '#shared/wire.ts';
import type { OfferFrame } from '#shared/wirePlan.ts';
import { type Api, isRefusal } from './api.ts';
import { backoff, pause } from './backoff.ts';
import { createCell, type Readable } from './cell.ts';
import { readEvents, type StreamEvent } from './eventStream.ts';
import type { Clock } from './ports/clock.ts';

/** How a page stands with its feed. */
export type LiveState = {
  /** `refused`: the link is unknown or withdrawn, and trying again is of no use. */
  readonly status: 'connecting' | 'live' | 'lost' | 'refused';
  /** Device milliseconds when anything was last heard; null before the first word. */
  readonly heardAt: number | null;
  /** Milliseconds to add to the device's clock to get the server's. */
  readonly skew: number;
  readonly refusal: RefusalReply | null;
  /** Long jobs of the server under way, by name. */
  readonly jobs: Readonly<Record<string, Omit<ProgressFrame, 'job'>>>;
};

/** Where the snapshot is kept: the query cache. */
export type SnapshotCache = {
  readonly read: () => Snapshot | undefined;
  readonly write: (snapshot: Snapshot) => void;
};

export type Live = Readable<LiveState> & {
  /** Follows the build until the answer is called. */
  readonly follow: () => () => void;
  /** The device came back (screen on, network up): try now, do not wait out the pause. */
  readonly nudge: () => void;
};

/** Nothing at all for so long, though the server beats more often: the line is dead even if nobody said so. */
const deadAfter = 45_000;
/** When the device comes back, a line this quiet is worth opening anew. */
const quietAfter = 20_000;

/** `fresh`: what is held no longer fits and a new snapshot is due. */
type Turn = 'got' | 'broken' | 'fresh' | 'stop';

/** Keeps one build up to date: a snapshot, then numbered deltas, then whatever it takes after a broken line. */
export function createLive(api: Api, clock: Clock, build: string, cache: SnapshotCache): Live {
  const cell = createCell<LiveState>({
    status: 'connecting',
    heardAt: null,
    skew: 0,
    refusal: null,
    jobs: {},
  });
  let hurry = new AbortController();

  const heard = (serverNow: string | null): void => {
    const now = clock.now();
    const skew = serverNow === null ? cell.read().skew : Date.parse(serverNow) - now;
    cell.write({ ...cell.read(), heardAt: now, skew });
  };
  const say = (status: LiveState['status'], refusal: RefusalReply | null = null): void =>
    cell.write({ ...cell.read(), status, refusal });

  async function snapshot(): Promise<Turn> {
    const answer = await api.get<Snapshot>(`/api/builds/${build}`);
    if (answer.kind === 'ok') {
      cache.write(answer.value);
      heard(answer.value.now);
      return 'got';
    }
    if (answer.kind === 'refused' && isFinal(answer.status)) {
      say('refused', answer.refusal);
      return 'stop';
    }
    return 'broken';
  }

  async function listen(stop: AbortSignal): Promise<Turn> {
    const after = cache.read()?.state.number ?? 0;
    const response = await api.open(`/api/builds/${build}/feed?after=${after}`, stop);
    if (response.status === 410) return 'fresh';
    if (isFinal(response.status)) {
      const body: unknown = await response.json().catch(() => null);
      say('refused', isRefusal(body) ? body : null);
      return 'stop';
    }
    if (!response.ok || response.body === null) return 'broken';
    say('live');
    let cancelWatch = (): void => {};
    const dead = new AbortController();
    const watch = (): void => {
      heard(null);
      cancelWatch();
      cancelWatch = clock.after(deadAfter, () => dead.abort());
    };
    watch();
    try {
      const hangUp = AbortSignal.any([stop, dead.signal]);
      for await (const event of readEvents(response.body, watch, hangUp)) {
        if (!take(event)) return 'fresh';
      }
    } finally {
      cancelWatch();
    }
    return 'broken';
  }

  /** False when the snapshot no longer matches what is said. */
  function take({ event, data }: StreamEvent): boolean {
    const held = cache.read();
    if (!held) return false;
    if (event === 'delta') {
      const delta = JSON.parse(data) as DeltaFrame;
      if (delta.fold !== held.fold) return false;
      // Numbers have no gaps: one left out means that something was missed.
      if (delta.number > held.state.number + 1) return false;
      cache.write({ ...held, state: applyDelta(held.state, delta) });
    } else if (event === 'forecast') {
      cache.write({ ...held, forecast: JSON.parse(data) as ForecastFrame });
    } else if (event === 'offer') {
      cache.write({ ...held, offer: JSON.parse(data) as OfferFrame });
    } else if (event === 'beat') {
      heard((JSON.parse(data) as BeatFrame).now);
    } else if (event === 'progress') {
      const { job, ...far } = JSON.parse(data) as ProgressFrame;
      const { [job]: _over, ...others } = cell.read().jobs;
      cell.write({ ...cell.read(), jobs: far.done < far.of ? { ...others, [job]: far } : others });
    }
    return true;
  }

  async function run(stop: AbortSignal): Promise<void> {
    let tries = 0;
    let fresh = cache.read() === undefined;
    while (!stop.aborted) {
      hurry = new AbortController();
      const now = AbortSignal.any([stop, hurry.signal]);
      const began = clock.now();
      // A line that breaks throws: what was missed is asked for again from the last number.
      const turn = await (fresh ? snapshot() : listen(now)).catch((): Turn => 'broken');
      if (stop.aborted || turn === 'stop') return;
      if (turn === 'got') {
        fresh = false;
        continue;
      }
      fresh = fresh || turn === 'fresh';
      // A line that held for a while was a good one: the next try is the first again.
      if (clock.now() - began > 10_000) tries = 0;
      if (turn === 'broken') say('lost');
      tries += 1;
      if (turn === 'broken' || tries > 1) await pause(clock, backoff(tries), now);
    }
  }

  return {
    read: cell.read,
    subscribe: cell.subscribe,
    follow: () => {
      const stop = new AbortController();
      void run(stop.signal);
      return () => stop.abort();
    },
    nudge: () => {
      const { status, heardAt } = cell.read();
      const quiet = clock.now() - (heardAt ?? 0);
      if (status !== 'live' || quiet > quietAfter) hurry.abort();
    },
  };
}

/** Identity answers: no repeat will change them. */
function isFinal(status: number): boolean {
  return status === 401 || status === 403 || status === 404;
}
