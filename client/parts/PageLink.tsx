import type { ReactNode } from 'react';
import { navigate } from 'wouter/use-browser-location';
import { addressOf, type Place } from '../data/place.ts';

type Props = {
  readonly to: Place;
  readonly className?: string;
  readonly current?: boolean;
  readonly children: ReactNode;
};

/** A link inside the program. It carries the secret along, which a plain path would drop. */
export function PageLink({ to, className, current, children }: Props) {
  const address = addressOf(to);
  return (
    <a
      href={address}
      className={className}
      aria-current={current ? 'page' : undefined}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
        event.preventDefault();
        navigate(address);
      }}
    >
      {children}
    </a>
  );
}
