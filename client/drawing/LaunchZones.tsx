import { words } from '../words/words.ts';
import type { StripView } from './stripView.ts';

type Stretch = { readonly from: number; readonly to: number };

type Props = {
  readonly view: StripView;
  /** Swept by bridge and vehicle. */
  readonly keepOff: Stretch;
  /** The far bank beyond its edge, where the kit closes that too during a move; null where it does not. */
  readonly landing: number | null;
};

/** The stretch that nobody but those who move it may be in, the landing where that is closed, and where others stand. */
export function LaunchZones({ view, keepOff, landing }: Props) {
  const { x, top, width, wide } = view;
  const said = words.launch;
  const left = Math.max(2, x(keepOff.from));
  const right = Math.min(width - 2, x(keepOff.to));
  const beyond = landing === null ? null : Math.max(x(landing), right + 6);
  return (
    <g>
      <Bracket
        closed
        from={left}
        to={right}
        top={top}
        label={wide ? said.keepOffMark : said.keepOffShort}
      />
      <Bracket from={0} to={left - 8} top={top} label={said.standMark} />
      {beyond === null ? null : (
        <Bracket closed from={beyond} to={width - 2} top={top} label={said.landingMark} />
      )}
    </g>
  );
}

/** A bracket with its words, or without where there is no room for them. */
function Bracket({
  from,
  to,
  top,
  label,
  closed = false,
}: Stretch & { readonly top: number; readonly label: string; readonly closed?: boolean }) {
  if (to - from < 12) return null;
  const half = (label.length * 7) / 2;
  return (
    <g>
      <path
        className={closed ? 'd-heavy' : 'd-thin'}
        d={`M${from} ${top + 30}V${top + 20}H${to}V${top + 30}`}
      />
      {to - from > 2 * half ? (
        <text
          className={`d-text small ${closed ? 'bold' : 'two'}`}
          x={(from + to) / 2}
          y={top + 13}
          textAnchor="middle"
        >
          {label}
        </text>
      ) : null}
    </g>
  );
}
