import { useEffect, useState } from 'react';
import type { Doubt } from '#domain/forecast/doubt/doubt.ts';
import { useBuild } from '../../data/useBuild.ts';
import { iso } from '../../words/units.ts';
import { type DoubtTrial, tryDoubt } from './tryDoubt.ts';

/** Milliseconds without another change after which a change is tried. */
const pause = 150;

/** What a change of the doubt would do; null while it is reckoned, and where nothing is changed or forecast. */
export function useDoubtTrial(doubt: Doubt | null): DoubtTrial | null {
  const { state, forecast, now } = useBuild();
  const [made, setMade] = useState<{ of: Doubt; trial: DoubtTrial } | null>(null);
  const frame = forecast?.forecast ?? null;
  const { plan } = state;
  const due = doubt !== null && made?.of !== doubt && plan !== null && frame !== null;
  useEffect(() => {
    if (!due) return;
    // After the switch has been drawn: the reckoning takes the device a moment.
    const timer = setTimeout(() => {
      setMade({ of: doubt, trial: tryDoubt(state, plan, doubt, iso(now), frame) });
    }, pause);
    return () => clearTimeout(timer);
  }, [due, doubt, plan, frame, state, now]);
  return doubt !== null && made?.of === doubt ? made.trial : null;
}
