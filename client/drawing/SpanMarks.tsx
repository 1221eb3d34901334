import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Span } from '#domain/progress/span.ts';
import { metres } from '../words/units.ts';
import { words } from '../words/words.ts';
import type { SpanView } from './spanView.ts';

/** The balance point over the rollers, and how far it still is to land. */
export function SpanMarks({
  view,
  bridge,
  span,
}: {
  readonly view: SpanView;
  readonly bridge: Bridge;
  readonly span: Span;
}) {
  const { geometry, x, y, wide, width } = view;
  const said = words.span;
  const top = y(geometry.highest) - (wide ? 34 : 20);
  const tipY = y(geometry.bottom(geometry.tip));
  const left = bridge.landsAt - geometry.tip;
  const standing = span.bays.some(({ whole }) => whole === 'done') || span.moved > 0;
  const showLand = !span.landed && standing && left > 0.05;
  const landY = tipY + (wide ? 26 : 18);
  const landMiddle = (x(geometry.tip) + x(bridge.landsAt)) / 2;
  return (
    <g>
      {span.balance === null ? null : (
        <g>
          <path
            className={span.balance < 0 ? 'd-mark-accent' : 'd-full'}
            d={`M${x(-span.balance) - 7} ${top - 12}h14l-7 11Z`}
          />
          <line
            className={span.balance < 0 ? 'd-accent' : 'd-line'}
            x1={x(-span.balance)}
            x2={x(-span.balance)}
            y1={top}
            y2={y(geometry.bottom(-span.balance))}
          />
          {wide ? (
            <text
              className={`d-text ${span.balance < 0 ? 'accent' : ''}`}
              x={x(-span.balance) + 14}
              y={top - 1}
            >
              {balanceWords(span.balance)}
            </text>
          ) : null}
        </g>
      )}
      {showLand ? (
        <g>
          <line
            className="d-dotted"
            x1={x(geometry.tip)}
            x2={x(bridge.landsAt)}
            y1={landY}
            y2={landY}
          />
          <path className="d-thin" d={`M${x(bridge.landsAt) - 8} ${landY - 5}l8 5l-8 5`} />
          <path className="d-thin" d={`M${x(geometry.tip)} ${tipY}V${landY + 5}`} />
          {wide ? (
            <text
              className="d-text"
              x={Math.min(landMiddle, width - 70)}
              y={landY - 8}
              textAnchor="middle"
            >
              {said.toLand(metres(left))}
            </text>
          ) : null}
        </g>
      ) : null}
    </g>
  );
}

/** Where the centre of gravity lies, in words. Metres behind the front rollers. */
export function balanceWords(balance: number): string {
  return balance < 0
    ? words.span.balanceAhead(metres(-balance))
    : words.span.balanceBehind(metres(balance));
}
