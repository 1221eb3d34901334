import { useMutation } from '@tanstack/react-query';
import type { DemoRequest } from '#shared/wireBuilds.ts';
import { startDemo } from '../../../data/hostApi.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import { NewLinks } from '../../newBuild/NewLinks.tsx';

/** Starts a demo beside this build, and says where another real one is opened. */
export function AnotherBuild() {
  const { api } = useBuild();
  const texts = words.leader.demo;
  const demo = useMutation({
    mutationFn: (how: NonNullable<DemoRequest['how']>) => startDemo(api, how),
  });
  return (
    <details className="quiet">
      <summary>{texts.title}</summary>
      <div className="stack-wide">
        <p>{texts.more}</p>
        <div className="row">
          <Button disabled={demo.isPending} onClick={() => demo.mutate('fresh')}>
            {texts.fresh}
          </Button>
          <Button disabled={demo.isPending} onClick={() => demo.mutate('half-built')}>
            {texts.halfBuilt}
          </Button>
        </div>
        <div role="status">
          {demo.isPending ? <p>{texts.running}</p> : null}
          {demo.data?.kind === 'refused' ? (
            <p className="warn">{words.said.refused(demo.data.refusal.sentence)}</p>
          ) : null}
          {demo.data?.kind === 'unreachable' ? (
            <p className="warn">{words.said.unreachable}</p>
          ) : null}
          {demo.data?.kind === 'ok' ? <NewLinks links={demo.data.value.links} /> : null}
        </div>
        <p className="second">{texts.host}</p>
      </div>
    </details>
  );
}
