import { useMutation, useQuery } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import type { Api } from '../../data/api.ts';
import { listBuilds, startDemo } from '../../data/hostApi.ts';
import { Button } from '../../parts/Button.tsx';
import { dateTimeGroup } from '../../words/units.ts';
import { words } from '../../words/words.ts';

/** Fetched when the host is here: nobody else's page needs it. */
const NewBuildForm = lazy(() => import('../newBuild/NewBuildForm.tsx'));

/** What the host can do: see the builds of this server, start the demo. */
export function HostDesk({ api, hostKey }: { readonly api: Api; readonly hostKey: string }) {
  const said = words.start;
  const list = useQuery({ queryKey: ['builds', hostKey], queryFn: () => listBuilds(api) });
  const demo = useMutation({
    mutationFn: () => startDemo(api, 'half-built'),
    onSuccess: () => void list.refetch(),
  });

  return (
    <section className="stack-wide">
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
      {list.data?.kind === 'ok' && list.data.value.builds.length === 0 ? <p>{said.none}</p> : null}
      {list.data?.kind === 'ok' ? (
        <ul className="stack">
          {list.data.value.builds.map((one) => (
            <li key={one.build} className="row">
              <strong>{one.name}</strong>
              <span className="second">{said.starts(dateTimeGroup(one.start, one.zone))}</span>
            </li>
          ))}
        </ul>
      ) : null}

      <div className="row">
        <Button disabled={demo.isPending} onClick={() => demo.mutate()}>
          {demo.isPending ? said.demoRunning : said.demo}
        </Button>
        <p className="second reading">{said.demoMore}</p>
      </div>
      {demo.data?.kind === 'refused' ? (
        <p className="notice warn">{demo.data.refusal.sentence}</p>
      ) : null}
      {demo.data?.kind === 'unreachable' ? <p className="notice warn">{said.unreachable}</p> : null}
      {demo.data?.kind === 'ok' ? (
        <div className="stack">
          <h3>{said.links}</h3>
          <p className="second">{said.linksMore}</p>
          <ul className="stack">
            {demo.data.value.links.map((link) => (
              <li key={link.id}>
                <a className="button" href={link.address} target="_blank" rel="noreferrer">
                  {link.name}
                </a>
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      <hr className="rule" />
      <Suspense fallback={<p aria-busy="true">{said.loading}</p>}>
        <NewBuildForm api={api} hostKey={hostKey} onOpened={() => void list.refetch()} />
      </Suspense>
      <hr className="rule" />
    </section>
  );
}
