import { useId } from 'react';
import type { StageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { metres } from '../words/units.ts';
import { words } from '../words/words.ts';
import { rollerHeight } from './girderDrawn.ts';
import { LaunchMarks, marksAbove } from './LaunchMarks.tsx';
import { LaunchStrip } from './LaunchStrip.tsx';
import { LaunchZones } from './LaunchZones.tsx';
import { type Launching, launchMoment } from './launchMoment.ts';
import { launchStripView } from './launchStripView.ts';
import { stageDoes } from './launchText.ts';
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
};

/** One stage to scale: above, what is added before the move; below it, on the same scale, the end of the move. */
export function StageFigure({ launching, stage, closesLanding }: Props) {
  const id = useId();
  const [box, width] = useWidth<HTMLElement>(1000);
  const start = launchMoment(launching, { stage: stage.stage, into: 0 });
  const end = launchMoment(launching, { stage: stage.stage, into: stage.metres });
  if (!start || !end) return null;
  const wide = width >= phone;
  const strip = (top: number, above: number, below: number) =>
    launchStripView(launching, { id, width, wide, top, above, below });
  const adding = strip(0, wide ? 26 : 20, 22);
  const moving = strip(adding.bottom + 6, wide ? marksAbove.wide : marksAbove.narrow + 26, 64);
  const does = stageDoes(launching.bridge, stage);
  const arrow = adding.y(rollerHeight) - 6;
  return (
    <figure ref={box} className="launch-figure">
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${moving.bottom}`}
        height={moving.bottom}
        role="img"
        aria-label={words.launch.figure(stage.stage, does)}
      >
        <Patterns id={id} />
        <LaunchStrip view={adding} launching={launching} moment={start} adding />
        <path
          className="d-dotted"
          d={`M${adding.x(start.front) + 4} ${arrow}H${adding.x(end.front) - 2}`}
        />
        <path className="d-thin" d={`M${adding.x(end.front) - 9} ${arrow - 5}l8 5l-8 5`} />
        {wide ? (
          <text
            className="d-text small bold"
            x={adding.x((start.front + end.front) / 2)}
            y={arrow - 8}
            textAnchor="middle"
          >
            {metres(stage.metres)}
          </text>
        ) : null}
        <LaunchStrip view={moving} launching={launching} moment={end} />
        <LaunchMarks view={moving} launching={launching} moment={end} />
        <LaunchZones
          view={moving}
          keepOff={stage.keepOff}
          landing={closesLanding ? siteProfile(launching.ground, launching.bridge).far.x : null}
        />
      </svg>
    </figure>
  );
}
