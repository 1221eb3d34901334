import { useState } from 'react';
import { keepOffCheck } from '#domain/progress/views/keepOff.ts';
import { crewLabel, taskLabel } from '#domain/progress/words.ts';
import type { Task } from '#domain/tasks/task.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Stepper } from '../../parts/Stepper.tsx';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { ClearSheet } from './ClearSheet.tsx';
import { useCard } from './card.ts';
import { crewThatAsks } from './comingKeepOff.ts';
import { Tick } from './Tick.tsx';

/** "Off, 7 of 7" for the keep-off task that comes next, once it is near. */
export function KeepOffNext({ task, own }: { readonly task: Task; readonly own: number }) {
  const { state, crew, fit, send, awake, press } = useCard();
  const [sheet, setSheet] = useState<'count' | 'clear' | null>(null);
  const said = words.chief.keepOff;
  const asking = crewThatAsks(state, task);
  const off = Math.max(0, fit - own);
  const told = state.clearances[task.id]?.off[crew];
  const met = keepOffCheck(state, task.id).some(
    (condition) => condition.kind === 'off' && condition.of === crew && condition.met,
  );
  const tell = (count: number): void =>
    void send('tell-off', { task: task.id, crew, off: count, of: fit });
  return (
    <section className="keep-off-next stack">
      <h2>{said.coming(taskLabel(state, task.id))}</h2>
      <p>{own > 0 ? said.offBut(own) : said.offAll}</p>
      {own > 0 && asking !== undefined && asking !== crew ? (
        <p className="second">{said.asks(crewLabel(state, asking))}</p>
      ) : null}
      {told ? (
        <p className={met ? '' : 'warn'}>
          <strong>{said.off(told.off, told.of)}.</strong> {said.told(clock(told.at, state.zone))}
        </p>
      ) : null}
      {met ? null : (
        <Tick mark="off" label={said.off(off, fit)} about={task.name} onPress={() => tell(off)} />
      )}
      <div className="card-row">
        <Button disabled={!awake} onClick={() => press(() => setSheet('count'))}>
          {said.otherCount}
        </Button>
        <Button disabled={!awake} onClick={() => press(() => setSheet('clear'))}>
          {said.seeClear}
        </Button>
      </div>
      {sheet === 'count' ? (
        <CountSheet
          title={said.countTitle}
          first={off}
          of={fit}
          label={(count) => said.tellCount(count, fit)}
          onTell={tell}
          onClose={() => setSheet(null)}
        />
      ) : null}
      {sheet === 'clear' ? <ClearSheet task={task.id} onClose={() => setSheet(null)} /> : null}
    </section>
  );
}

type CountProps = {
  readonly title: string;
  readonly first: number;
  readonly of: number;
  readonly label: (count: number) => string;
  readonly onTell: (count: number) => void;
  readonly onClose: () => void;
};

/** A head count that is not the whole crew. */
export function CountSheet({ title, first, of, label, onTell, onClose }: CountProps) {
  const [count, setCount] = useState(first);
  return (
    <Sheet title={title} onClose={onClose}>
      <Stepper label={title} value={count} most={of} onChange={setCount} />
      <Button
        look="solid"
        onClick={() => {
          onTell(count);
          onClose();
        }}
      >
        {label(count)}
      </Button>
    </Sheet>
  );
}
