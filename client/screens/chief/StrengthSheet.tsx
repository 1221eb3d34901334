import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Stepper } from '../../parts/Stepper.tsx';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';

/** How many of the crew are fit for work now. */
export function StrengthSheet({ onClose }: { readonly onClose: () => void }) {
  const { crew, fit, send } = useCard();
  const [count, setCount] = useState(fit);
  const said = words.chief.strength;
  return (
    <Sheet title={said.title} onClose={onClose}>
      <Stepper label={said.title} value={count} onChange={setCount} />
      <Button
        look="solid"
        onClick={() => {
          void send('tell-strength', { crew, fit: count });
          onClose();
        }}
      >
        {said.tell(count)}
      </Button>
    </Sheet>
  );
}
