import { useMutation } from '@tanstack/react-query';
import type { Api } from '../../data/api.ts';
import { startDemo } from '../../data/hostApi.ts';
import { Button } from '../../parts/Button.tsx';
import { words } from '../../words/words.ts';
import { NewLinks } from '../newBuild/NewLinks.tsx';

/** Starts a demo build, half built or fresh, and shows the links of its people. */
export function DemoStart({
  api,
  onStarted,
}: {
  readonly api: Api;
  readonly onStarted: () => void;
}) {
  const said = words.start;
  const demo = useMutation({
    mutationFn: (how: 'half-built' | 'fresh') => startDemo(api, how),
    onSuccess: onStarted,
  });
  return (
    <section className="stack">
      <h2>{said.demo}</h2>
      <p className="reading">{said.demoMore}</p>
      <div className="row">
        <Button disabled={demo.isPending} onClick={() => demo.mutate('half-built')}>
          {said.demoHalfBuilt}
        </Button>
        <Button disabled={demo.isPending} onClick={() => demo.mutate('fresh')}>
          {said.demoFresh}
        </Button>
      </div>
      <div role="status">
        {demo.isPending ? <p aria-busy="true">{said.demoRunning}</p> : null}
        {demo.data?.kind === 'refused' ? (
          <p className="notice warn">{demo.data.refusal.sentence}</p>
        ) : null}
        {demo.data?.kind === 'unreachable' ? (
          <p className="notice warn">{said.unreachable}</p>
        ) : null}
      </div>
      {demo.data?.kind === 'ok' ? <NewLinks links={demo.data.value.links} /> : null}
    </section>
  );
}
