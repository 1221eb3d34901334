import { useState } from 'react';
import { partCount } from '#domain/bridge/parts.ts';
import { shortParts } from '#domain/bridge/stores/shortParts.ts';
import { stillStarts } from '#domain/bridge/stores/stillStarts.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { taskLabel } from '#domain/progress/words.ts';
import { usesOf } from '#domain/tasks/fromKit/uses.ts';
import type { StoresLoad } from '#shared/wireStores.ts';
import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { SaidLine } from '../../parts/SaidLine.tsx';
import { useSay } from '../../parts/useSay.ts';
import { words } from '../../words/words.ts';

type Props = { readonly loads: readonly StoresLoad[]; readonly kit: Kit };

/** Tasks named when a load is wrong, before the rest is only counted. */
const named = 8;

/** Counting a truck: what is short and which task that stops first, or what goes on without a wrong load. */
export function TailgateCount({ loads, kit }: Props) {
  const { state } = useBuild();
  const { said: answer, busy, say } = useSay();
  const toCome = loads.filter(({ here, carries }) => !here && carries.length > 0);
  const [chosen, setChosen] = useState(toCome[0]?.load ?? '');
  const [counted, setCounted] = useState<Readonly<Record<string, number>>>({});
  const [wrong, setWrong] = useState(false);
  const said = words.stores;
  const load = toCome.find((one) => one.load === chosen) ?? toCome[0];
  const { bridge, work } = state;
  if (!load || !bridge) return null;

  const there = (id: string, count: number) => counted[`${load.load} ${id}`] ?? count;
  const totals = new Map(
    load.carries.map(({ id, count }) => {
      const part = kit.parts.find((one) => one.id === id);
      const all = part ? partCount(part, bridge.bays, bridge.nose) : count;
      return [id, all - (count - there(id, count))] as const;
    }),
  );
  const short = shortParts(bridge, kit, usesOf(bridge, kit, work), totals);
  const missing = new Set(loads.filter((one) => !one.here).map((one) => one.load));
  const open = stillStarts(work, missing).filter((id) => state.tasks[id]?.status !== 'done');

  async function tell(of: StoresLoad): Promise<void> {
    await say('tell-load-in', { load: of.load });
    for (const { part, missing: count, firstTask } of short)
      await say('tell-short', { part, count, ...(firstTask ? { task: firstTask } : {}) });
  }

  return (
    <section className="stack no-print" aria-labelledby="stores-tailgate">
      <h2 id="stores-tailgate">{said.tailgate}</h2>
      <p className="second">{said.tailgateMore}</p>
      <label className="field">
        <span className="label">{said.choose}</span>
        <select
          value={load.load}
          onChange={(event) => {
            setChosen(event.target.value);
            setWrong(false);
          }}
        >
          {toCome.map(({ load: id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <ul className="tailgate">
        {load.carries.map(({ id, part, count }) => {
          const now = there(id, count);
          const set = (next: number) => setCounted({ ...counted, [`${load.load} ${id}`]: next });
          return (
            <li key={id}>
              <span>{part}</span>
              <Button
                aria-label={said.fewer(part)}
                disabled={now <= 0}
                onClick={() => set(now - 1)}
              >
                −
              </Button>
              <output>{said.of(now, count)}</output>
              <Button
                aria-label={said.more(part)}
                disabled={now >= count}
                onClick={() => set(now + 1)}
              >
                +
              </Button>
            </li>
          );
        })}
      </ul>
      <div role="status" className="stack-tight">
        {short.length === 0 ? <p>{said.whole}</p> : null}
        {short.map(({ part, missing: count, firstTask }) => (
          <p key={part} className="warn">
            {said.short(count, part)}:{' '}
            {firstTask === null ? said.stopsNone : said.stops(taskLabel(state, firstTask))}.
          </p>
        ))}
      </div>
      <div className="row">
        <Button look="solid" disabled={busy} onClick={() => void tell(load)}>
          {short.length === 0 ? said.tellIn : said.tellShort}
        </Button>
        <Button aria-expanded={wrong} onClick={() => setWrong(!wrong)}>
          {said.wrong}
        </Button>
      </div>
      {wrong ? (
        <div className="notice stack">
          <p>{open.length === 0 ? said.wrongNone : said.wrongTitle}</p>
          <ul className="listed">
            {open.slice(0, named).map((id) => (
              <li key={id}>{taskLabel(state, id)}</li>
            ))}
            {open.length > named ? <li>{said.wrongMore(open.length - named)}</li> : null}
          </ul>
        </div>
      ) : null}
      <SaidLine said={answer} />
    </section>
  );
}
