import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { LinkInfo, LinkRequest, NewLink } from '#shared/wire.ts';
import type { Answer } from '../../../data/api.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';
import { NewLinks } from '../../newBuild/NewLinks.tsx';
import { LinkLine } from './LinkLine.tsx';
import { MakeLink } from './MakeLink.tsx';

type Done = Answer<NewLink | undefined>;

/** Who may open which page: make, renew and withdraw links. An address is shown once, when it is made. */
export function LinksPage() {
  const { api, build, linkKey } = useBuild();
  const [old, setOld] = useState(false);
  const texts = words.links;
  const path = `/api/builds/${build}/links`;
  const list = useQuery({
    queryKey: ['links', linkKey],
    queryFn: () => api.get<{ readonly links: readonly LinkInfo[] }>(path),
  });
  const onSuccess = () => void list.refetch();
  const make = useMutation({
    mutationFn: (request: LinkRequest): Promise<Done> => api.post<NewLink>(path, request),
    onSuccess,
  });
  const renew = useMutation({
    mutationFn: (link: string): Promise<Done> => api.post<NewLink>(`${path}/${link}/renewal`, {}),
    onSuccess,
  });
  const withdraw = useMutation({
    mutationFn: (link: string): Promise<Done> => api.remove<undefined>(`${path}/${link}`),
    onSuccess,
  });
  const last = [make, renew, withdraw].toSorted((a, b) => b.submittedAt - a.submittedAt)[0]?.data;
  const made = last?.kind === 'ok' ? last.value : undefined;
  const links = list.data?.kind === 'ok' ? list.data.value.links : null;
  const shown = links?.filter(({ withdrawn }) => old || !withdrawn) ?? [];

  return (
    <>
      <h1>{texts.title}</h1>
      <p className="second reading">{texts.more}</p>
      <div role="status" className="made-link">
        {made ? <NewLinks links={[made]} /> : null}
        {last?.kind === 'refused' ? (
          <p className="warn">{words.said.refused(last.refusal.sentence)}</p>
        ) : null}
        {last?.kind === 'unreachable' ? <p className="warn">{words.said.unreachable}</p> : null}
      </div>
      {list.isPending ? <p aria-busy="true">{texts.loading}</p> : null}
      {list.data && list.data.kind !== 'ok' ? (
        <div className="notice row" role="status">
          <p>
            {list.data.kind === 'refused' ? list.data.refusal.sentence : words.said.unreachable}
          </p>
          <Button onClick={() => void list.refetch()}>{words.start.again}</Button>
        </div>
      ) : null}
      <ul className="items links-list">
        {shown.map((link) => (
          <LinkLine
            key={link.id}
            link={link}
            onRenew={() => renew.mutate(link.id)}
            onWithdraw={() => withdraw.mutate(link.id)}
          />
        ))}
      </ul>
      {links?.some(({ withdrawn }) => withdrawn) ? (
        <label className="tick">
          <input type="checkbox" checked={old} onChange={(event) => setOld(event.target.checked)} />
          {texts.showOld}
        </label>
      ) : null}
      <MakeLink onMake={(request) => make.mutate(request)} busy={make.isPending} />
    </>
  );
}
