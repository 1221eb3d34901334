import { useState } from 'react';
import { taskLabel } from '#domain/progress/words.ts';
import type { Bank } from '#domain/tasks/effect.ts';
import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Stepper } from '../../parts/Stepper.tsx';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { WordsField } from './WordsField.tsx';

/** A named person on a bank says that the zones are empty, and how many people are on the bank. */
export function ClearSheet({
  task,
  onClose,
}: {
  readonly task: string;
  readonly onClose: () => void;
}) {
  const { state, crew, fit, send } = useCard();
  const { you } = useBuild();
  const chief = state.work.crews.find(({ id }) => id === crew)?.chief;
  const [bank, setBank] = useState<Bank>(bankOfCrew(state.work, crew));
  const [name, setName] = useState(chief ?? you.name);
  const [people, setPeople] = useState(fit);
  const said = words.chief.keepOff;
  const named = name.trim() !== '';
  return (
    <Sheet title={said.clearTitle(taskLabel(state, task))} onClose={onClose}>
      <p>{said.clearMore}</p>
      <fieldset className="field">
        <legend className="label">{said.bank}</legend>
        <div className="choices two">
          {(['near', 'far'] as const).map((each) => (
            <Button key={each} aria-pressed={bank === each} onClick={() => setBank(each)}>
              {said[each]}
            </Button>
          ))}
        </div>
      </fieldset>
      <WordsField label={said.name} value={name} onChange={setName} longest={60} />
      <Stepper label={said.count} value={people} onChange={setPeople} />
      <Button
        look="solid"
        disabled={!named}
        onClick={() => {
          void send('tell-clear', { task, bank, name: name.trim(), people });
          onClose();
        }}
      >
        {said.tellClear(said[bank].toLowerCase(), people)}
      </Button>
      {named ? null : <p className="second small">{said.needsName}</p>}
    </Sheet>
  );
}

/** The bank where a crew's own work mostly lies: a first guess that one press corrects. */
function bankOfCrew(
  {
    tasks,
    zones,
  }: {
    tasks: readonly { needs: readonly { anyOf: readonly string[] }[]; zones: readonly string[] }[];
    zones: readonly { id: string; bank: string }[];
  },
  crew: string,
): Bank {
  const bankOf = new Map(zones.map(({ id, bank }) => [id, bank]));
  const own = tasks
    .filter(({ needs }) => needs.some(({ anyOf }) => anyOf.length === 1 && anyOf[0] === crew))
    .flatMap((task) => task.zones.map((zone) => bankOf.get(zone)));
  const far = own.filter((bank) => bank === 'far').length;
  const near = own.filter((bank) => bank === 'near').length;
  return far > near ? 'far' : 'near';
}
