import { useState } from 'react';
import type { RefusalReply } from '#shared/wire.ts';
import type { KitListed } from '#shared/wireBuilds.ts';
import type { OwnKitRequest, ReviewReply } from '#shared/wireReview.ts';
import { useBuild } from '../../data/useBuild.ts';
import { ThreePoints } from '../../drawing/ThreePoints.tsx';
import { Button } from '../../parts/Button.tsx';
import { FaultList } from '../../parts/FaultList.tsx';
import { Field } from '../../parts/Field.tsx';
import { words } from '../../words/words.ts';

/** How the making of an own kit stands. */
type Making =
  | { readonly step: 'none' | 'making' | 'unreachable' }
  | { readonly step: 'made'; readonly kit: KitListed }
  | { readonly step: 'refused'; readonly refusal: RefusalReply };

/** As the command post takes it. */
const fitting = /^[a-z0-9][a-z0-9-]{0,39}$/;

/** Minutes proposed for the kit's tasks, to be taken all or some into an own copy of the kit. */
export function Proposals({ reply }: { readonly reply: ReviewReply }) {
  const said = words.after.proposals;
  const { open, kit, earlier, review } = reply;
  const why = kit === null ? said.noKit : !open ? said.later : null;
  return (
    <section className="stack" aria-labelledby="after-proposals">
      <h2 id="after-proposals">{said.title}</h2>
      {why ? (
        <p>{why}</p>
      ) : (
        <>
          <p className="reading">
            {said.more} {said.earlier(earlier)}
          </p>
          {review.proposals.length === 0 ? (
            <p>{said.none}</p>
          ) : (
            <Choice proposals={review.proposals} kit={kit ?? ''} />
          )}
        </>
      )}
    </section>
  );
}

type ChoiceProps = {
  readonly proposals: ReviewReply['review']['proposals'];
  readonly kit: string;
};

function Choice({ proposals, kit }: ChoiceProps) {
  const { api, build } = useBuild();
  const said = words.after.proposals;
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [name, setName] = useState(`${kit}-own`.slice(0, 40));
  const [making, setMaking] = useState<Making>({ step: 'none' });
  const taken = proposals.filter(({ task }) => !left.has(task)).map(({ task }) => task);
  const named = fitting.test(name);
  // Where a kit has one for each bank under one name, its id tells them apart.
  const alike = (title: string): boolean =>
    proposals.filter((one) => one.name === title).length > 1;

  async function make(): Promise<void> {
    setMaking({ step: 'making' });
    const request: OwnKitRequest = { name, tasks: taken };
    const answer = await api.post<KitListed>(`/api/builds/${build}/review/kit`, request);
    if (answer.kind === 'ok') setMaking({ step: 'made', kit: answer.value });
    else if (answer.kind === 'refused') setMaking({ step: 'refused', refusal: answer.refusal });
    else setMaking({ step: 'unreachable' });
  }

  return (
    <>
      <div className="row no-print">
        <Button onClick={() => setLeft(new Set())}>{said.all}</Button>
        <Button onClick={() => setLeft(new Set(proposals.map(({ task }) => task)))}>
          {said.nothing}
        </Button>
        <span role="status">{said.taken(taken.length, proposals.length)}</span>
      </div>
      <p className="second small">{said.key}</p>
      <ul className="proposals">
        {proposals.map(({ task, name: title, was, minutes, builds, tasks }) => (
          <li key={task}>
            <label className="tick">
              <input
                type="checkbox"
                checked={!left.has(task)}
                onChange={({ target }) => {
                  const next = new Set(left);
                  if (target.checked) next.delete(task);
                  else next.add(task);
                  setLeft(next);
                }}
              />
              <strong>{templateName(title)}</strong>
              {alike(title) ? <span className="second small">{task}</span> : null}
            </label>
            <p>
              {said.change(values(was), values(minutes))}{' '}
              <span className="second small">{said.rests(builds, tasks)}</span>
            </p>
            <ThreePoints was={was} is={minutes} most={Math.max(was.slow, minutes.slow)} />
          </li>
        ))}
      </ul>
      <form
        className="row beside no-print"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (named && taken.length > 0) void make();
        }}
      >
        <Field label={said.name} hint={said.nameHint} fault={named ? undefined : said.nameFault}>
          {(ties) => (
            <input
              {...ties}
              value={name}
              autoCapitalize="none"
              spellCheck={false}
              onChange={({ target }) => setName(target.value)}
            />
          )}
        </Field>
        <Button
          type="submit"
          look="solid"
          disabled={!named || taken.length === 0 || making.step === 'making'}
        >
          {said.accept}
        </Button>
      </form>
      <div role="status">
        {taken.length === 0 ? <p>{said.pick}</p> : null}
        {making.step === 'making' ? <p>{said.making}</p> : null}
        {making.step === 'made' ? <p className="notice">{said.made(making.kit.title)}</p> : null}
        {making.step === 'unreachable' ? <p className="warn">{words.said.unreachable}</p> : null}
        {making.step === 'refused' ? (
          <>
            <p className="warn">{words.said.refused(making.refusal.sentence)}</p>
            <FaultList faults={making.refusal.faults ?? []} />
          </>
        ) : null}
      </div>
    </>
  );
}

/** A kit names a task once for all bays and sides: what differs is left open. */
function templateName(name: string): string {
  return name.replaceAll(/\{[a-z-]+\}/g, '…');
}

function values({
  quick,
  likely,
  slow,
}: ReviewReply['review']['proposals'][number]['was']): string {
  return words.after.proposals.values(String(quick), String(likely), String(slow));
}
