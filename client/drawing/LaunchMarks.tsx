import { kilonewtons, metres } from '../words/units.ts';
import { words } from '../words/words.ts';
import { girderDepth, rollerHeight } from './girderDrawn.ts';
import type { Launching, LaunchMoment } from './launchMoment.ts';
import { centreWords } from './launchText.ts';
import type { StripView } from './stripView.ts';

type Props = {
  readonly view: StripView;
  readonly launching: Launching;
  readonly moment: LaunchMoment;
};

/** Pixels that a small letter takes at the most. */
const letter = 6.8;

/** Pixels over the girder that the balance and the brackets take. */
export const marksAbove = { wide: 78, narrow: 44 };

/** The centre of gravity, how far it is from tipping, what each roller carries, how far the tip reaches and hangs. */
export function LaunchMarks({ view, launching, moment }: Props) {
  const { x, y, wide } = view;
  const { held, front } = moment;
  const { landsAt } = launching.bridge;
  const over = held.landed ? landsAt : 0;
  const top = y(rollerHeight + girderDepth(launching.bridge)) - (wide ? 22 : 14);
  const centre = x(held.centre);
  const tips = held.margin < 0;
  const reach = front - over;
  // Over the far bank the words would stand on its line.
  const near = x(landsAt) - x(front) < 80;
  const label = wide
    ? words.launch.balance(centreWords(held.margin, held.landed))
    : metres(held.margin);
  // Ahead of the mark where there is room for it, else behind.
  const right = Math.max(centre + 4, x(over)) + 8;
  const ahead = right + label.length * letter < view.width;
  return (
    <g>
      <path
        className={tips ? 'd-mark-accent' : 'd-full'}
        d={`M${centre - 7} ${top - 12}h14l-7 11Z`}
      />
      <line
        className={tips ? 'd-accent' : 'd-line'}
        x1={centre}
        x2={centre}
        y1={top}
        y2={y(rollerHeight)}
      />
      <path
        className={tips ? 'd-accent' : 'd-thin'}
        d={`M${centre} ${top - 4}H${x(over)}M${x(over)} ${top - 9}V${y(rollerHeight)}`}
      />
      <text
        className={`d-text small ${tips ? 'accent' : ''}`}
        x={ahead ? right : centre - 10}
        y={top - 1}
        textAnchor={ahead ? 'start' : 'end'}
      >
        {label}
      </text>
      {held.reactions.map(({ of, at, newtons }, row) => (
        <g key={of}>
          <path
            className={newtons < 0 ? 'd-accent' : 'd-line'}
            d={
              newtons < 0
                ? `M${x(at)} ${y(0) + 6}v16m-4 -6l4 6l4 -6`
                : `M${x(at)} ${y(0) + 22}v-16m-4 6l4 -6l4 6`
            }
          />
          <text
            className={`d-text small ${newtons < 0 ? 'accent' : ''}`}
            x={of === 'landing' ? x(at) + 8 : Math.max(x(at) - 8, 48)}
            y={y(0) + (wide || of === 'landing' || row === 1 ? 20 : 36)}
            textAnchor={of === 'landing' ? 'start' : 'end'}
          >
            {kilonewtons(newtons)}
          </text>
        </g>
      ))}
      {wide && reach > 1 ? <Reach view={view} from={over} to={front} landed={held.landed} /> : null}
      {wide && !held.landed && held.sag !== null && front > 2 ? (
        <text
          className="d-text small"
          x={x(front) + (near ? -6 : 6)}
          y={y(rollerHeight - held.sag) + (near ? 16 : 12)}
          textAnchor={near ? 'end' : 'start'}
        >
          {words.launch.tipMark(metres(held.sag, 2))}
        </text>
      ) : null}
    </g>
  );
}

/** How far the bridge hangs over, under it. */
function Reach({
  view: { x, y },
  from,
  to,
  landed,
}: {
  readonly view: StripView;
  readonly from: number;
  readonly to: number;
  readonly landed: boolean;
}) {
  // Once landed what the landing rollers carry stands over the line.
  const level = y(0) + (landed ? 36 : 24);
  const middle = (x(from) + x(to)) / 2;
  const text = words.launch.overhangMark(metres(to - from));
  // In the gap there is air under the bridge; the words need their own paper where the line is short.
  const fits = x(to) - x(from) > text.length * 7 + 20;
  return (
    <g>
      <path
        className="d-thin"
        d={`M${x(from) + 4} ${level - 5}v10M${x(to)} ${level - 5}v10M${x(from) + 4} ${level}H${x(to)}`}
      />
      <text
        className="d-text small"
        x={fits ? middle : x(to) + 8}
        y={fits ? level - 5 : level + 4}
        textAnchor={fits ? 'middle' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}
