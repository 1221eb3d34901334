import { useMemo } from 'react';
import { createApi } from '../../data/api.ts';
import { keyOf } from '../../data/place.ts';
import { usePorts } from '../../data/ports/ports.ts';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { ThemeSwitch } from '../../parts/ThemeSwitch.tsx';
import { words } from '../../words/words.ts';
import { HostDesk } from './HostDesk.tsx';

/** Says what this is and how to get in; with the host's secret, lists the builds and starts them. */
export function StartPage({ secret }: { readonly secret: string }) {
  const { network, clock } = usePorts();
  const api = useMemo(() => createApi(network, clock, secret), [network, clock, secret]);
  const said = words.start;
  return (
    <PageFrame
      title={words.program}
      header={
        <div className="page-line">
          <h1 className="answer">{said.title}</h1>
          <ThemeSwitch linkKey={secret === '' ? 'start' : keyOf('host', secret)} />
        </div>
      }
      footer={
        <p className="second small">
          {words.planningAid} {words.demoKits}
        </p>
      }
    >
      <p className="lead reading">{said.what}</p>
      <hr className="rule" />
      {secret === '' ? null : <HostDesk api={api} hostKey={keyOf('host', secret)} />}
      <section className="stack reading">
        <h2>{said.how}</h2>
        {said.howMore.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </section>
    </PageFrame>
  );
}
