import { useEffect, useState } from 'react';
import { usePorts } from './ports/ports.ts';

/** Device time in milliseconds plus `skew`, moving every `step` milliseconds. */
export function useNow(step: number, skew = 0): number {
  const { clock } = usePorts();
  const [now, setNow] = useState(() => clock.now());
  useEffect(() => {
    let cancel = (): void => {};
    const tick = (): void => {
      setNow(clock.now());
      cancel = clock.after(step, tick);
    };
    tick();
    return () => cancel();
  }, [clock, step]);
  return now + skew;
}
