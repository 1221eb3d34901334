import { useMemo } from 'react';
import { courseNow } from '#domain/progress/views/courseNow.ts';
import { holdUps } from '#domain/progress/views/holdUps.ts';
import { openedOf } from '#domain/progress/views/opened.ts';
import { taskLabel } from '#domain/progress/words.ts';
import { useBuild } from '../../data/useBuild.ts';
import { iso } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** What holds the opening, the gravest first, and what is next on the chain that sets it. */
export function HoldsUp() {
  const { state, now } = useBuild();
  const said = words.commander.holds;
  const minute = Math.floor(now / 60_000) * 60_000;
  const [first, ...others] = holdUps(state, iso(minute));
  const { open } = openedOf(state);
  const next = useMemo(() => {
    if (open) return undefined;
    const chain = courseNow(state, iso(minute))?.chain ?? [];
    return chain.find((task) => state.tasks[task]?.status !== 'done');
  }, [state, minute, open]);
  // Once traffic crosses nothing holds the opening; what is still told as wrong is not kept from the commander.
  const title = open ? said.titleOpen : said.title;
  const nothing = open ? said.nothingOpen : said.nothing;
  return (
    <section className="stack">
      <h2>{title}</h2>
      {first ? <p className="warn">{first.sentence}</p> : <p>{nothing}</p>}
      {others.slice(0, 4).map(({ sentence }) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {next ? <p className="second">{said.chain(taskLabel(state, next))}</p> : null}
    </section>
  );
}
