import { useMutation } from '@tanstack/react-query';
import type { BuildListed } from '#shared/wireBuilds.ts';
import type { Api } from '../../data/api.ts';
import { makeLeaderLink } from '../../data/hostApi.ts';
import { Button } from '../../parts/Button.tsx';
import { dateTimeGroup } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { NewLinks } from '../newBuild/NewLinks.tsx';

/** One build of this server, and a way in for a leader who has lost theirs. */
export function BuildLine({ api, build }: { readonly api: Api; readonly build: BuildListed }) {
  const said = words.start;
  const link = useMutation({ mutationFn: () => makeLeaderLink(api, build.build) });
  return (
    <li className="stack">
      <div className="row">
        <strong>{build.name}</strong>
        {build.unit === '' ? null : <span>{build.unit}</span>}
        <span className="second">{said.starts(dateTimeGroup(build.start, build.zone))}</span>
        <span className="second">{said.entries(build.number)}</span>
        <Button disabled={link.isPending} onClick={() => link.mutate()}>
          {said.leaderLink}
          <span className="out-of-sight"> {build.name}</span>
        </Button>
      </div>
      {link.data?.kind === 'refused' ? (
        <p className="notice warn">{link.data.refusal.sentence}</p>
      ) : null}
      {link.data?.kind === 'unreachable' ? <p className="notice warn">{said.unreachable}</p> : null}
      {link.data?.kind === 'ok' ? <NewLinks links={[link.data.value]} /> : null}
    </li>
  );
}
