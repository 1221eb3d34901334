import { words } from '../words/words.ts';
import { Button } from './Button.tsx';
import './stepper.css';

type Props = {
  readonly label: string;
  readonly value: number;
  readonly least?: number;
  readonly most?: number;
  readonly step?: number;
  readonly onChange: (value: number) => void;
};

/** A number by two big buttons: no keyboard comes up, and a mitten hits them. */
export function Stepper({ label, value, least = 0, most = 500, step = 1, onChange }: Props) {
  const said = words.chief.strength;
  return (
    <fieldset className="stepper">
      <legend>{label}</legend>
      <Button
        aria-label={said.fewer(step)}
        disabled={value <= least}
        onClick={() => onChange(Math.max(least, value - step))}
      >
        −
      </Button>
      <output aria-live="polite">{value}</output>
      <Button
        aria-label={said.more(step)}
        disabled={value >= most}
        onClick={() => onChange(Math.min(most, value + step))}
      >
        +
      </Button>
    </fieldset>
  );
}
