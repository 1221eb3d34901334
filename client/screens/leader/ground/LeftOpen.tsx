import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import { leftOpen, withoutMeasure } from './groundForm.ts';
import type { Design } from './useDesign.ts';

/** Marks everything that nobody has measured as not measured, in one press; the answer then says what hangs on it. */
export function LeftOpen({ design }: { readonly design: Design }) {
  const { form, change } = design;
  const open = leftOpen(form);
  if (open.length === 0) return null;
  return (
    <p className="notice row">
      <span>{words.ground.leftOpen(open.length)}</span>
      <Button onClick={() => change(withoutMeasure(form))}>{words.ground.markOpen}</Button>
    </p>
  );
}
