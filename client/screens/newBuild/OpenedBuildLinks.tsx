import { useEffect, useRef } from 'react';
import type { NewLink } from '#shared/wire.ts';
import { Button } from '../../parts/Button.tsx';
import { words } from '../../words/words.ts';
import { NewLinks } from './NewLinks.tsx';

type Props = {
  readonly name: string;
  readonly links: readonly NewLink[];
  readonly onAnother: () => void;
};

/** A build just opened: on to the leader's page, and everybody's link. It comes in sight, where the long form was. */
export function OpenedBuildLinks({ name, links, onAnother }: Props) {
  const said = words.newBuild;
  const top = useRef<HTMLElement>(null);
  const leader = links.find(({ role }) => role === 'leader');
  useEffect(() => {
    top.current?.scrollIntoView();
    top.current?.focus({ preventScroll: true });
  }, []);
  return (
    <section ref={top} tabIndex={-1} className="stack-wide" role="status">
      <h2>{said.opened(name)}</h2>
      {leader ? (
        <p>
          <a className="button solid" href={leader.address} target="_blank" rel="noreferrer">
            {said.goOn}
          </a>
        </p>
      ) : null}
      <NewLinks links={links} />
      <p>
        <Button onClick={onAnother}>{said.another}</Button>
      </p>
    </section>
  );
}
