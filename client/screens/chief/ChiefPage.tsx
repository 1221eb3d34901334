import { useState } from 'react';
import { crewLabel } from '#domain/progress/words.ts';
import { keyOf } from '../../data/place.ts';
import { usePorts } from '../../data/ports/ports.ts';
import { useBuild } from '../../data/useBuild.ts';
import { useNow } from '../../data/useNow.ts';
import { Button } from '../../parts/Button.tsx';
import { HaltButton } from '../../parts/HaltButton.tsx';
import { LineState } from '../../parts/LineState.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { ThemeSwitch } from '../../parts/ThemeSwitch.tsx';
import { clock, zoneName } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { CardJobs } from './CardJobs.tsx';
import { CardContext } from './card.ts';
import { HaltCard } from './HaltCard.tsx';
import { KeepOffRunning } from './KeepOffRunning.tsx';
import { LastTold } from './LastTold.tsx';
import { useAwake } from './useAwake.ts';
import { Warnings } from './Warnings.tsx';
import './chief.css';

/** The crew chief's card: what now, what can hurt us, one big tick, and the next two. */
export default function ChiefPage() {
  const { you, told, build, secret, skew, linkKey } = useBuild();
  const { storage } = usePorts();
  const { awake, wake, press } = useAwake();
  const now = useNow(1000, skew);
  const mittenKey = `spanwright.mittens.${keyOf(build, secret)}`;
  const [mittens, setMittens] = useState(() => storage.read(mittenKey) !== 'off');
  // The leader may look at any crew's card; a chief has only the own one.
  const [chosen, setChosen] = useState(you.crew ?? told.work.crews[0]?.id ?? '');
  const crew = you.crew ?? chosen;
  const said = words.chief.card;
  const state = told.crews[crew];

  if (!state) {
    return (
      <PageFrame title={words.title(words.pages.chief, told.name)} header={<LineState />}>
        <h1>{said.noCrew}</h1>
        <p className="lead">{said.noCrewMore}</p>
      </PageFrame>
    );
  }
  const name = crewLabel(told, crew);
  return (
    <CardContext value={{ crew, crewName: name, fit: state.fit, awake, press }}>
      <PageFrame
        className={`card ${mittens ? 'mittens' : 'bare'} ${awake ? '' : 'asleep'}`}
        title={words.title(name, told.name)}
        header={
          <>
            <div className="card-head">
              <h1>
                {name} <span>{said.fit(state.fit, state.planned.people)}</span>
              </h1>
              <p>
                {clock(now, told.zone)} {zoneName(now, told.zone)}
              </p>
              <LineState />
            </div>
            <HaltButton />
          </>
        }
        footer={
          <>
            <p className="second small">
              {words.planningAid}
              {told.bridge?.kit.notForUse ? ` ${words.notForUse}` : ''}
            </p>
            <div className="row no-print">
              <ThemeSwitch linkKey={linkKey} />
              <Button
                look="plain"
                aria-label={mittens ? said.toBare : said.toMittens}
                onClick={() => {
                  storage.write(mittenKey, mittens ? 'off' : 'on');
                  setMittens(!mittens);
                }}
              >
                {mittens ? said.bare : said.mittens}
              </Button>
              {you.crew === undefined ? (
                <label className="field">
                  <span className="label">{said.whose}</span>
                  <select value={crew} onChange={(event) => setChosen(event.target.value)}>
                    {told.work.crews.map(({ id }) => (
                      <option key={id} value={id}>
                        {crewLabel(told, id)}
                      </option>
                    ))}
                  </select>
                </label>
              ) : null}
            </div>
          </>
        }
      >
        <HaltCard />
        <KeepOffRunning />
        <Warnings />
        <CardJobs />
        <div className="card-bottom">
          {awake ? null : <p className="asleep-note">{said.asleep}</p>}
          <LastTold />
          {/* Awake, nothing to press stands here: whatever woke it by chance presses nothing next. */}
          {awake ? null : (
            <Button look="solid" className="wake" onClick={wake}>
              {said.wake}
            </Button>
          )}
        </div>
      </PageFrame>
    </CardContext>
  );
}
