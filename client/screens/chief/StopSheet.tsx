import { useId, useState } from 'react';
import type { Job } from '#domain/progress/views/crewNow.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';

/** Why a job is stopped: a short list, one press each, or a few words. */
export function StopSheet({ job, onClose }: { readonly job: Job; readonly onClose: () => void }) {
  const { crew, send } = useCard();
  const [why, setWhy] = useState('');
  const id = useId();
  const said = words.chief.stop;
  const tell = (reason: string): void => {
    void send('tell-stopped', { task: job.task, crew, why: reason });
    onClose();
  };
  return (
    <Sheet title={said.title(job.name)} onClose={onClose}>
      <div className="choices">
        {said.reasons.map((reason) => (
          <Button key={reason} onClick={() => tell(reason)}>
            {reason}
          </Button>
        ))}
      </div>
      <div className="field">
        <label htmlFor={id}>{said.other}</label>
        <input
          id={id}
          value={why}
          maxLength={400}
          onChange={(event) => setWhy(event.target.value)}
        />
      </div>
      <Button look="solid" disabled={why.trim() === ''} onClick={() => tell(why.trim())}>
        {said.send}
      </Button>
    </Sheet>
  );
}
