import { useCallback, useRef, useState } from 'react';
import type { Fault } from '#domain/fault.ts';
import type { Breach } from '#domain/progress/entry.ts';
import type { RefusalCode } from '#domain/refusal.ts';
import type { Send, Sent } from '../data/sender.ts';
import { useBuild } from '../data/useBuild.ts';

/** What became of the last thing that was told or asked here. */
export type Said =
  | { readonly state: 'sending' }
  | { readonly state: 'recorded'; readonly entry: number; readonly breaches: readonly Breach[] }
  | {
      readonly state: 'refused';
      readonly code: RefusalCode;
      readonly sentence: string;
      readonly faults: readonly Fault[];
    }
  | { readonly state: 'no-answer' };

export type Say = {
  readonly said: Said | null;
  readonly busy: boolean;
  readonly say: Send;
  readonly clear: () => void;
};

/** Sends commands and remembers what became of the last one, to be said beside the button. */
export function useSay(): Say {
  const { send, sendings } = useBuild();
  const [said, setSaid] = useState<Said | null>(null);
  const last = useRef(0);
  const say = useCallback<Send>(
    async (kind, body, extra) => {
      last.current += 1;
      const mine = last.current;
      setSaid({ state: 'sending' });
      const sent = await send(kind, body, extra);
      // An older answer must not stand beside a newer press.
      if (mine === last.current) setSaid(saidOf(sent));
      return sent;
    },
    [send],
  );
  const clear = useCallback(() => setSaid(null), []);
  // With no link reports wait by themselves: nobody is kept from telling the next one.
  const waiting = sendings.some(({ state }) => state === 'waiting');
  return { said, busy: said?.state === 'sending' && !waiting, say, clear };
}

export function saidOf(sent: Sent): Said {
  switch (sent.outcome) {
    case 'recorded':
      return { state: 'recorded', entry: sent.entry, breaches: sent.breaches };
    case 'refused':
      return {
        state: 'refused',
        code: sent.code,
        sentence: sent.sentence,
        faults: sent.faults ?? [],
      };
    case 'no-answer':
      return { state: 'no-answer' };
  }
}
