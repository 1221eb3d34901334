import { useCallback, useEffect, useRef, useState } from 'react';
import { usePorts } from '../../data/ports/ports.ts';

/** So long without a touch, and the card sleeps: a phone in a pocket must not tick. */
const sleepAfter = 60_000;
/** After waking and after each press nothing is taken for a moment: a shaking hand presses twice. */
const pause = 900;

export type Awake = {
  readonly awake: boolean;
  readonly wake: () => void;
  /** Runs a press, unless it comes too soon after the last one. */
  readonly press: (act: () => void) => void;
};

/** Lets the card sleep after a while untouched, and whenever the screen goes dark. */
export function useAwake(): Awake {
  const { clock } = usePorts();
  const [awake, setAwake] = useState(true);
  const deafUntil = useRef(0);

  useEffect(() => {
    if (!awake) return;
    let cancel = (): void => {};
    const stir = (): void => {
      cancel();
      cancel = clock.after(sleepAfter, () => setAwake(false));
    };
    const hide = (): void => {
      if (document.visibilityState === 'hidden') setAwake(false);
    };
    stir();
    document.addEventListener('pointerdown', stir);
    document.addEventListener('keydown', stir);
    document.addEventListener('visibilitychange', hide);
    return () => {
      cancel();
      document.removeEventListener('pointerdown', stir);
      document.removeEventListener('keydown', stir);
      document.removeEventListener('visibilitychange', hide);
    };
  }, [awake, clock]);

  const wake = useCallback(() => {
    deafUntil.current = clock.now() + pause;
    setAwake(true);
  }, [clock]);

  const press = useCallback(
    (act: () => void) => {
      if (clock.now() < deafUntil.current) return;
      deafUntil.current = clock.now() + pause;
      act();
    },
    [clock],
  );
  return { awake, wake, press };
}
