import { useCallback, useEffect, useState } from 'react';
import type { ChoiceTimes } from '#domain/bridge/choiceTimes.ts';
import type { ChoiceTimesFrame, TimesProgressFrame, TimesRequest } from '#shared/wireBridges.ts';
import type { Api } from '../../../data/api.ts';
import { readEvents } from '../../../data/eventStream.ts';

/** How far the times of a choice are. */
export type ChoiceTimesState = {
  /** By `keyOf`; null where a bridge cannot be planned. */
  readonly times: ReadonlyMap<string, ChoiceTimes | null>;
  /** 0 to 1 while they are worked out. */
  readonly progress: number | null;
  readonly failed: boolean;
  readonly stopped: boolean;
};

const nothing: ChoiceTimesState = {
  times: new Map(),
  progress: null,
  failed: false,
  stopped: false,
};

/** Milliseconds that a ground stays as it is before anybody is asked: nobody plans while a key is down. */
const settled = 900;

export function keyOf({ bays, nose }: { readonly bays: number; readonly nose: number }): string {
  return `${bays}/${nose}`;
}

/** When each bridge of the choice opens, from the server, bridge by bridge; null asks for nothing. */
export function useChoiceTimes(api: Api, request: TimesRequest | null) {
  const [state, setState] = useState(nothing);
  const [round, setRound] = useState(0);
  const [stopping, setStopping] = useState<AbortController | null>(null);
  const text = request === null ? null : JSON.stringify(request);

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when `again` raises the round
  useEffect(() => {
    setState(nothing);
    if (text === null) return;
    const stop = new AbortController();
    setStopping(stop);
    const timer = setTimeout(() => {
      follow(api, JSON.parse(text) as TimesRequest, stop.signal, (change) =>
        setState((before) => (stop.signal.aborted ? before : change(before))),
      );
    }, settled);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [api, text, round]);

  const stop = useCallback(() => {
    stopping?.abort();
    setState((before) => ({ ...before, progress: null, stopped: true }));
  }, [stopping]);
  return { ...state, stop, again: () => setRound((before) => before + 1) };
}

async function follow(
  api: Api,
  request: TimesRequest,
  stop: AbortSignal,
  set: (change: (before: ChoiceTimesState) => ChoiceTimesState) => void,
): Promise<void> {
  set((before) => ({ ...before, progress: 0 }));
  try {
    const response = await api.open('/api/bridges/times', stop, request);
    if (!response.ok || !response.body) throw new Error('refused');
    for await (const { event, data } of readEvents(response.body, () => {}, stop)) {
      if (event === 'progress') {
        const { done, of } = JSON.parse(data) as TimesProgressFrame;
        set((before) => ({ ...before, progress: of === 0 ? 1 : done / of }));
      } else if (event === 'choice') {
        const frame = JSON.parse(data) as ChoiceTimesFrame;
        set((before) => ({
          ...before,
          times: new Map(before.times).set(keyOf(frame), frame.times),
        }));
      }
    }
    set((before) => ({ ...before, progress: null }));
  } catch {
    set((before) => ({ ...before, progress: null, failed: true }));
  }
}
