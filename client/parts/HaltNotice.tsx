import type { ReactNode } from 'react';
import { useBuild } from '../data/useBuild.ts';
import { clock } from '../words/units.ts';
import { words } from '../words/words.ts';

/** Says loudly that a halt is on, since when, who called it and why. Nothing when there is none. */
export function HaltNotice({ children }: { readonly children?: ReactNode }) {
  // A halt called here counts here at once, sent or not.
  const { told } = useBuild();
  const { halt, zone } = told;
  return (
    <div role="alert">
      {halt ? (
        <section className="notice strong stack" aria-label={words.halt.title}>
          <h2>{words.halt.on(clock(halt.since, zone))}</h2>
          <p>{words.halt.by(halt.by.name, halt.why.trim())}</p>
          {children}
        </section>
      ) : null}
    </div>
  );
}
