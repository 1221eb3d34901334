import { useState } from 'react';
import type { LeverMoved, LeverSizesWanted, MovesReply } from '#shared/wireForecast.ts';
import { useBuild } from '../../data/useBuild.ts';
import { ShiftBar } from '../../drawing/ShiftBar.tsx';
import { Button } from '../../parts/Button.tsx';
import { clock, iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { LeverSizes } from './LeverSizes.tsx';
import { useLevers } from './useLevers.ts';

/** What would move the opening, each thing tried alone, the most first; and what cannot help. */
export function LeversSection() {
  const { forecast, jobs } = useBuild();
  const { state, reply, ask, stop } = useLevers();
  const [sizes, setSizes] = useState<LeverSizesWanted | null>({});
  const said = words.forecast.levers;
  const asking = state.step === 'asking';
  const job = asking ? jobs[state.job] : undefined;
  const possible = forecast?.forecast != null;
  return (
    <section className={reply ? 'stack' : 'stack no-print'} aria-labelledby="forecast-levers">
      <h2 id="forecast-levers">{said.title}</h2>
      <p className="second small">{said.more}</p>
      {possible ? (
        <>
          <LeverSizes onChange={setSizes} />
          <div className="row no-print">
            <Button
              look={reply ? 'line' : 'solid'}
              disabled={asking || sizes === null}
              onClick={() => {
                if (sizes) void ask(sizes);
              }}
            >
              {reply ? said.again : said.ask}
            </Button>
            {asking ? (
              <>
                <progress
                  max={1}
                  value={job ? job.done / job.of : undefined}
                  aria-label={said.asking}
                />
                <Button onClick={stop}>{said.stop}</Button>
              </>
            ) : null}
          </div>
        </>
      ) : (
        <p>{forecast?.why ?? words.commander.noForecast}</p>
      )}
      <div role="status">
        {asking ? <p>{job ? said.askingFar(job.done, job.of) : said.asking}</p> : null}
        {state.step === 'stopped' ? <p>{said.stopped}</p> : null}
        {state.step === 'unreachable' ? <p className="warn">{words.said.unreachable}</p> : null}
        {state.step === 'refused' ? (
          <p className="warn">{words.said.refused(state.refusal.sentence)}</p>
        ) : null}
      </div>
      {reply ? <Answer reply={reply} /> : null}
    </section>
  );
}

function Answer({ reply }: { readonly reply: MovesReply }) {
  const { state, now } = useBuild();
  const said = words.forecast.levers;
  const { ranked, cannotHelp, cannotHurt } = reply;
  const most = Math.max(...ranked.flatMap(({ gain50, gain80 }) => [gain50, gain80]).map(Math.abs));
  return (
    <div className="stack-wide">
      <p>
        {said.seen(clock(reply.at, state.zone, iso(now)))}{' '}
        {state.number > reply.number ? <span className="warn">{said.old}</span> : null}
      </p>
      {ranked.length === 0 ? <p>{said.none}</p> : null}
      {ranked.length > 0 ? (
        <div>
          <p className="second small">{said.key}</p>
          <ol className="levers">
            {ranked.map((lever) => (
              <li key={keyOf(lever)}>
                <span>{lever.sentence}</span>
                <ShiftBar gain80={lever.gain80} gain50={lever.gain50} most={most} />
              </li>
            ))}
          </ol>
        </div>
      ) : null}
      <div className="two-fields">
        <div className="stack-tight">
          <h3>{said.cannotHelp}</h3>
          {cannotHelp.length === 0 ? <p>{said.cannotHelpNone}</p> : <Names some={cannotHelp} />}
        </div>
        {cannotHurt.length > 0 ? (
          <div className="stack-tight">
            <h3>{said.cannotHurt}</h3>
            <Names some={cannotHurt} />
          </div>
        ) : null}
      </div>
    </div>
  );
}

function Names({ some }: { readonly some: readonly LeverMoved[] }) {
  return (
    <ul className="listed">
      {some.map((lever) => (
        <li key={keyOf(lever)}>{lever.words}</li>
      ))}
    </ul>
  );
}

function keyOf({ kind, of, words: what }: LeverMoved): string {
  return `${kind} ${of ?? ''} ${what}`;
}
