import type { Job } from '#domain/progress/views/crewNow.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';

/** How much of a job is done, in quarters: finer is not known on site. */
export function PartSheet({ job, onClose }: { readonly job: Job; readonly onClose: () => void }) {
  const { crew, send } = useCard();
  const said = words.chief.part;
  const shares = [
    [0.25, said.quarter],
    [0.5, said.half],
    [0.75, said.threeQuarters],
  ] as const;
  return (
    <Sheet title={said.title(job.name)} onClose={onClose}>
      <div className="choices">
        {shares.map(([part, label]) => (
          <Button
            key={part}
            onClick={() => {
              void send('tell-part', { task: job.task, crew, part });
              onClose();
            }}
          >
            {label}
          </Button>
        ))}
      </div>
    </Sheet>
  );
}
