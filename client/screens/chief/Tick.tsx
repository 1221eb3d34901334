import { useCard } from './card.ts';

type Props = {
  readonly mark: 'done' | 'start' | 'off';
  readonly label: string;
  readonly about: string;
  readonly onPress: () => void;
  /** Shown in its place, and not to be pressed now. */
  readonly off?: boolean;
};

const marks = {
  done: 'M6 26 20 40 46 10',
  start: 'M8 25h32M27 10l15 15-15 15',
  off: 'M42 25H10M23 10 8 25l15 15',
} as const;

/** The one big tick of a job. It sleeps with the card and takes no second press right after a first. */
export function Tick({ mark, label, about, onPress, off = false }: Props) {
  const { awake, press } = useCard();
  return (
    <button
      type="button"
      className={`tick tick-${mark}`}
      disabled={!awake || off}
      onClick={() => press(onPress)}
    >
      <svg viewBox="0 0 50 50" aria-hidden="true">
        <path d={marks[mark]} />
      </svg>
      <span>
        <strong>{label}</strong>
        <span>{about}</span>
      </span>
    </button>
  );
}
