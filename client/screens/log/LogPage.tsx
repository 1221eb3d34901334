import { useState } from 'react';
import { rollCall } from '#domain/progress/rules/halt.ts';
import { useBuild } from '../../data/useBuild.ts';
import { BuildHead } from '../../parts/BuildHead.tsx';
import { HaltNotice } from '../../parts/HaltNotice.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { words } from '../../words/words.ts';
import { StoresParts } from '../stores/StoresParts.tsx';
import { CrewsNow } from './CrewsNow.tsx';
import { EntryLine } from './EntryLine.tsx';
import { LastEntries } from './LastEntries.tsx';
import './log.css';

/** The log keeper's page: one line to type what the radio says, and the board it lands on. */
export default function LogPage() {
  const { state } = useBuild();
  return (
    <PageFrame
      title={words.title(words.pages.log, state.name)}
      header={<BuildHead page={words.pages.log} />}
      footer={<p className="second small">{words.planningAid}</p>}
      className="log-page"
    >
      <h1 className="out-of-sight">{words.title(words.pages.log, state.name)}</h1>
      <HaltNotice>
        <RollCallLine />
      </HaltNotice>
      <EntryLine />
      <hr className="rule" />
      {state.work.tasks.length === 0 ? (
        <section className="notice stack">
          <h2>{words.log.emptyTitle}</h2>
          <p>{words.log.empty}</p>
        </section>
      ) : null}
      <div className="log-board">
        <CrewsNow />
        <LastEntries />
      </div>
      <StoresFold />
      <details className="how">
        <summary>{words.log.how}</summary>
        <dl>
          {words.log.howLines.map(([typed, meaning]) => (
            <div key={typed}>
              <dt>{typed}</dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
        <p className="second">{words.log.holds}</p>
      </details>
    </PageFrame>
  );
}

/** The stores, worked out only once somebody opens them. */
function StoresFold() {
  const [open, setOpen] = useState(false);
  return (
    <details className="how" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.stores.title}</summary>
      {open ? <StoresParts /> : null}
    </details>
  );
}

function RollCallLine() {
  const { state, now } = useBuild();
  const open = rollCall(state, new Date(now).toISOString()).filter(({ answered }) => !answered);
  return (
    <>
      <p>{words.log.haltMore}</p>
      {open.length === 0 ? (
        <p>{words.log.haltAll}</p>
      ) : (
        <ul className="roll-call">
          {open.map(({ crew, sentence }) => (
            <li key={crew}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
}
