import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import type { Api } from '../../data/api.ts';
import { listBuilds } from '../../data/hostApi.ts';
import { onceMore } from '../../data/onceMore.ts';
import { Button } from '../../parts/Button.tsx';
import { words } from '../../words/words.ts';
import { BuildLine } from './BuildLine.tsx';
import { DemoStart } from './DemoStart.tsx';

/** Fetched when the host is here: nobody else's page needs it. */
const NewBuildForm = lazy(onceMore(() => import('../newBuild/NewBuildForm.tsx')));

/** What the host can do: see the builds of this server, let a leader in, start the demo or a new build. */
export function HostDesk({ api, hostKey }: { readonly api: Api; readonly hostKey: string }) {
  const said = words.start;
  const list = useQuery({ queryKey: ['builds', hostKey], queryFn: () => listBuilds(api) });
  return (
    <>
      <section className="stack">
        <h2>{said.builds}</h2>
        {list.isPending ? <p aria-busy="true">{said.loading}</p> : null}
        {list.data?.kind === 'unreachable' ? (
          <div className="notice row" role="status">
            <p>{said.unreachable}</p>
            <Button onClick={() => void list.refetch()}>{said.again}</Button>
          </div>
        ) : null}
        {list.data?.kind === 'refused' ? (
          <p className="notice warn">{list.data.refusal.sentence}</p>
        ) : null}
        {list.data?.kind === 'ok' && list.data.value.builds.length === 0 ? (
          <p>{said.none}</p>
        ) : null}
        {list.data?.kind === 'ok' ? (
          <ul className="stack">
            {list.data.value.builds.map((one) => (
              <BuildLine key={one.build} api={api} build={one} />
            ))}
          </ul>
        ) : null}
      </section>
      <hr className="rule" />
      <Suspense fallback={<p aria-busy="true">{said.loading}</p>}>
        <NewBuildForm api={api} hostKey={hostKey} onOpened={() => void list.refetch()} />
      </Suspense>
      <hr className="rule" />
      <DemoStart api={api} onStarted={() => void list.refetch()} />
      <hr className="rule" />
    </>
  );
}
