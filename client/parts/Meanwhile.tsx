import type { LiveState } from '../data/live.ts';
import { words } from '../words/words.ts';

/** What a page shows before its first snapshot, and when its link is refused. */
export function Meanwhile({ live, secret }: { readonly live: LiveState; readonly secret: string }) {
  const said = words.meanwhile;
  const [title, more] =
    secret === ''
      ? [said.noSecret, said.noSecretMore]
      : live.status === 'refused'
        ? [said.refused, live.refusal?.sentence ?? said.refusedMore]
        : live.status === 'lost'
          ? [said.lost, said.lostMore]
          : [said.connecting, said.connectingMore];
  return (
    <main className="page stack-wide" aria-busy={live.status === 'connecting'}>
      <h1>{title}</h1>
      <p className="lead" role="status">
        {more}
      </p>
    </main>
  );
}
