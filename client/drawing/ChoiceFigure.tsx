import { useId } from 'react';
import { metres } from '../words/units.ts';
import { words } from '../words/words.ts';
import { girderDepth, rollerHeight } from './girderDrawn.ts';
import { LaunchStrip } from './LaunchStrip.tsx';
import { type Launching, launchMoment } from './launchMoment.ts';
import { Patterns } from './Patterns.tsx';
import { SeatedBridge } from './SeatedBridge.tsx';
import { SiteBanks } from './SiteBanks.tsx';
import { siteProfile } from './siteProfile.ts';
import { phone } from './spanView.ts';
import { stripView } from './stripView.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Props = {
  readonly launching: Launching;
  /** Metres of ground drawn, the same for all bridges of a choice: they are at one scale. */
  readonly reach: { readonly from: number; readonly to: number };
  readonly label: string;
};

/** One bridge of a choice as its tip lands, or where it will lie when it is floated out; with the room that it needs. */
export function ChoiceFigure({ launching, reach, label }: Props) {
  const id = useId();
  const [box, width] = useWidth<HTMLElement>(700);
  const { bridge, ground } = launching;
  const landing = bridge.stages.find(({ lands }) => lands);
  const moment = landing && launchMoment(launching, { stage: landing.stage, into: landing.metres });
  const wide = width >= phone;
  const site = siteProfile(ground, bridge);
  const view = stripView({
    id,
    width,
    wide,
    reach,
    highest: Math.max(0, site.far.y) + rollerHeight + girderDepth(bridge),
    top: 0,
    above: 24,
    below: 56,
  });
  const { x, y } = view;
  const there = ground?.roomBehind ?? null;
  const [needs, has] = [y(0) + 22, y(0) + 44];
  const said = words.choice;
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
        {moment ? (
          <LaunchStrip view={view} launching={launching} moment={moment} />
        ) : (
          <>
            <SiteBanks view={view} site={site} />
            <SeatedBridge view={view} bridge={bridge} ground={ground} site={site} />
          </>
        )}
        <Room
          from={x(-bridge.roomNeeded)}
          to={x(0)}
          at={needs}
          text={said.figureRoom(metres(bridge.roomNeeded))}
        />
        {there === null ? null : (
          <Room from={x(-there)} to={x(0)} at={has} text={said.figureThere(metres(there))} />
        )}
      </svg>
    </figure>
  );
}

function Room({
  from,
  to,
  at,
  text,
}: {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly text: string;
}) {
  const left = Math.max(from, 1);
  return (
    <g>
      <path className="d-thin" d={`M${left} ${at - 5}v10M${to} ${at - 5}v10M${left} ${at}H${to}`} />
      <text className="d-text small" x={(left + to) / 2} y={at - 4} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}

/** Ground that shows every one of these bridges as its tip lands, with its room, metres ahead of the front rollers. */
export function choiceReach(all: readonly Launching[]): Props['reach'] {
  return {
    from:
      Math.min(
        ...all.map(({ bridge, ground }) => -Math.max(bridge.roomNeeded, ground?.roomBehind ?? 0)),
      ) - 2,
    to: Math.max(...all.map(({ bridge }) => bridge.landsAt)) + 6,
  };
}
