import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Span } from '#domain/progress/span.ts';
import type { TaskStatus } from '#domain/progress/state.ts';
import { GirderPanel } from './GirderPanel.tsx';
import type { SpanView } from './spanView.ts';

type Props = {
  readonly view: SpanView;
  readonly bridge: Bridge;
  readonly span: Span;
  /** Bay whose tasks are shown. */
  readonly chosenBay: number | null;
};

/** The bridge as it stands: rollers, nose, bays with deck and kerbs, ramps, and the vehicle that pushes. */
export function SpanBridge({ view, bridge, span, chosenBay }: Props) {
  const { geometry, x, y } = view;
  const { bottom, depth } = geometry;
  const seatedAll = span.seated.near && span.seated.far;
  const floated = bridge.manner === 'floated';
  const nothing = geometry.nose.length === 0 && geometry.bays.length === 0;
  return (
    <g>
      {floated || seatedAll ? null : <Rollers view={view} bottomOfFar={geometry.far.y} />}
      {geometry.nose.map(({ section, from, to }) => {
        const status = span.nose.find((one) => one.section === section)?.whole ?? 'to-come';
        return (
          <g key={`nose-${section}`}>
            <GirderPanel
              view={view}
              from={from}
              to={to}
              status={status}
              slender
              left={[bottom(from), bottom(from) + depth * 0.7]}
              right={[bottom(to), bottom(to) + depth * (section === 1 ? 0.55 : 0.7)]}
            />
          </g>
        );
      })}
      {geometry.bays.map(({ bay, from, to }) => {
        const state = span.bays.find((one) => one.bay === bay);
        const status = state?.whole ?? 'to-come';
        const top = (at: number): number => y(bottom(at) + depth);
        return (
          <g key={`bay-${bay}`}>
            <GirderPanel
              view={view}
              from={from}
              to={to}
              status={status}
              left={[bottom(from), bottom(from) + depth]}
              right={[bottom(to), bottom(to) + depth]}
            />
            <Plank
              status={state?.deck?.status ?? null}
              view={view}
              x1={x(from)}
              x2={x(to)}
              y1={top(from)}
              y2={top(to)}
              lift={4}
            />
            <Plank
              status={state?.kerb?.status ?? null}
              view={view}
              x1={x(from)}
              x2={x(to)}
              y1={top(from)}
              y2={top(to)}
              lift={10}
            />
            {floated && from >= 0 ? (
              <path
                className="d-open"
                d={`M${x(from) + 2} ${y(bottom(from))}v8q0 6 6 6H${x(to) - 8}q6 0 6 -6v-8`}
              />
            ) : null}
            {x(to) - x(from) >= 22 ? (
              <text
                className={`d-text small ${chosenBay === bay ? 'heavy' : 'two'}`}
                x={(x(from) + x(to)) / 2}
                y={Math.min(top(from), top(to)) - 18}
                textAnchor="middle"
              >
                {bay}
              </text>
            ) : null}
            {chosenBay === bay ? (
              <rect
                className="d-heavy"
                x={x(from) - 3}
                y={Math.min(top(from), top(to)) - 14}
                width={x(to) - x(from) + 6}
                height={y(bottom(from)) - top(from) + 20}
              />
            ) : null}
          </g>
        );
      })}
      <Ramps view={view} span={span} />
      {nothing || floated || span.landed ? null : <Vehicle view={view} at={geometry.tail - 1.5} />}
    </g>
  );
}

/** Deck planks and kerbs: a thick line, hatched short while at work, dashed to come. */
function Plank({
  status,
  view,
  x1,
  x2,
  y1,
  y2,
  lift,
}: {
  readonly status: TaskStatus | null;
  readonly view: SpanView;
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
  readonly lift: number;
}) {
  if (status === null || status === 'to-come') return null;
  const up = view.wide ? lift : lift * 0.6;
  const className =
    status === 'done' ? (lift > 6 ? 'd-line' : 'd-plank') : 'd-plank d-plank-at-work';
  return <line className={className} x1={x1} x2={x2} y1={y1 - up} y2={y2 - up} />;
}

function Rollers({ view, bottomOfFar }: { readonly view: SpanView; readonly bottomOfFar: number }) {
  const { geometry, x, y } = view;
  const { front, rear, far } = geometry.rollers;
  return (
    <g>
      {[
        { at: rear, ground: 0 },
        { at: front, ground: 0 },
        { at: far, ground: bottomOfFar },
      ].map(({ at, ground }) => {
        const half = Math.max(4, 0.5 * view.scale);
        const top = y(ground + 0.55);
        return (
          <path
            key={at}
            className="d-full"
            d={`M${x(at) - half} ${y(ground)}L${x(at) - half * 0.5} ${top}H${x(at) + half * 0.5}L${x(at) + half} ${y(ground)}Z`}
          />
        );
      })}
    </g>
  );
}

/** Ramps at the ends, approaches on the ground beyond them. */
function Ramps({ view, span }: { readonly view: SpanView; readonly span: Span }) {
  const { geometry, x, y, id } = view;
  const bays = geometry.bays;
  const front = bays[0]?.to ?? 0;
  const rear = bays.at(-1)?.from ?? 0;
  const ends = [
    { bank: 'near', at: rear, out: -5, ground: 0, edge: geometry.near.x },
    { bank: 'far', at: front, out: 5, ground: geometry.far.y, edge: geometry.far.x },
  ] as const;
  return (
    <g>
      {ends.map(({ bank, at, out, ground, edge }) => {
        const ramp = span.ramps[bank];
        const approach = span.approaches[bank];
        const deck = y(geometry.bottom(at) + geometry.depth * 0.6);
        return (
          <g key={bank}>
            {ramp && span.seated[bank] ? (
              <path
                className={`d-${ramp}`}
                fill={ramp === 'at-work' || ramp === 'stopped' ? `url(#${id}-hatch)` : undefined}
                d={`M${x(at)} ${deck}V${y(ground)}H${x(at + out)}Z`}
              />
            ) : null}
            {approach === 'done' ? (
              <line
                className="d-heavy"
                x1={x(
                  span.seated[bank] ? at + out : out < 0 ? Math.min(at, edge) : Math.max(at, edge),
                )}
                x2={x(out < 0 ? geometry.from : geometry.to)}
                y1={y(ground) - 2}
                y2={y(ground) - 2}
              />
            ) : null}
          </g>
        );
      })}
    </g>
  );
}

function Vehicle({ view, at }: { readonly view: SpanView; readonly at: number }) {
  const { x, y, scale } = view;
  const unit = Math.max(3, Math.min(scale, 16)) * 0.9;
  const right = x(at);
  const base = y(0);
  const wheel = unit * 0.55;
  return (
    <g>
      <path
        className="d-line"
        d={`M${right - unit * 4.4} ${base - wheel}V${base - unit * 1.4}h${unit * 2}v${-unit * 1.1}h${unit * 1.4}l${unit} ${unit * 1.1}v${unit * 1.4 - wheel}Z`}
      />
      <rect
        className="d-full"
        x={right - unit * 3.9}
        y={base - wheel * 1.6}
        width={wheel * 1.6}
        height={wheel * 1.6}
        rx={wheel}
      />
      <rect
        className="d-full"
        x={right - unit * 1.5}
        y={base - wheel * 1.6}
        width={wheel * 1.6}
        height={wheel * 1.6}
        rx={wheel}
      />
    </g>
  );
}
