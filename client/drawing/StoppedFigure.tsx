import { useId } from 'react';
import type { StageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { LaunchMarks, marksAbove } from './LaunchMarks.tsx';
import { LaunchStrip } from './LaunchStrip.tsx';
import { LaunchZones } from './LaunchZones.tsx';
import { type Launching, launchMoment } from './launchMoment.ts';
import { launchStripView } from './launchStripView.ts';
import { Patterns } from './Patterns.tsx';
import { siteProfile } from './siteProfile.ts';
import { phone } from './spanView.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Props = {
  readonly launching: Launching;
  readonly stage: StageStatics;
  /** The kit closes the landing too during a move. */
  readonly closesLanding: boolean;
  /** Metres into its move. */
  readonly into: number;
  readonly label: string;
};

/** A launch that has stopped, to scale, with what holds it. */
export function StoppedFigure({ launching, stage, closesLanding, into, label }: Props) {
  const id = useId();
  const [box, width] = useWidth<HTMLElement>(1000);
  const moment = launchMoment(launching, { stage: stage.stage, into });
  if (!moment) return null;
  const wide = width >= phone;
  const view = launchStripView(launching, {
    id,
    width,
    wide,
    top: 0,
    above: wide ? marksAbove.wide : marksAbove.narrow + 26,
    below: 64,
  });
  return (
    <figure ref={box} className="launch-figure">
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${view.bottom}`}
        height={view.bottom}
        role="img"
        aria-label={label}
      >
        <Patterns id={id} />
        <LaunchStrip view={view} launching={launching} moment={moment} />
        <LaunchMarks view={view} launching={launching} moment={moment} />
        <LaunchZones
          view={view}
          keepOff={stage.keepOff}
          landing={closesLanding ? siteProfile(launching.ground, launching.bridge).far.x : null}
        />
      </svg>
    </figure>
  );
}
