import { useMutation } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { BuildSource, OpenedBuild, OpenRequest } from '#shared/wireBuilds.ts';
import type { Api } from '../../data/api.ts';
import { usePorts } from '../../data/ports/ports.ts';
import { useNow } from '../../data/useNow.ts';
import { Button } from '../../parts/Button.tsx';
import { FaultList } from '../../parts/FaultList.tsx';
import { words } from '../../words/words.ts';
import { DesignAnswer } from '../leader/ground/DesignAnswer.tsx';
import { DesignFields } from '../leader/ground/DesignFields.tsx';
import { DesignMore } from '../leader/ground/DesignMore.tsx';
import { focusField } from '../leader/ground/focusField.ts';
import { LeftOpen } from '../leader/ground/LeftOpen.tsx';
import { useDesign } from '../leader/ground/useDesign.ts';
import { BuildFields } from './BuildFields.tsx';
import { OpenedBuildLinks } from './OpenedBuildLinks.tsx';
import { buildFaults, emptyBuild, openRequest, startOf, type TypedBuild } from './openForm.ts';
import { TablesFields } from './TablesFields.tsx';
import { noTables, readTyped, tablesSource } from './tables.ts';
import './newBuild.css';

type Props = {
  /** With the host's link. */
  readonly api: Api;
  readonly hostKey: string;
  readonly onOpened: () => void;
};

/** A whole order of work comes from a program, not from this page. */
type Kind = Exclude<BuildSource['kind'], 'work'>;

/** Opens a build from a measured ground, from tables, or empty, and shows the links of its people. */
export default function NewBuildForm({ api, hostKey, onOpened }: Props) {
  const { ids } = usePorts();
  const now = useNow(60_000);
  const [typed, setTyped] = useState<TypedBuild>(() => {
    const zone = Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
    return emptyBuild(zone, now);
  });
  const [kind, setKind] = useState<Kind>('bridge');
  const [tables, setTables] = useState(noTables);
  const [tried, setTried] = useState(false);
  const element = useRef<HTMLFormElement>(null);
  // One id for every attempt at this build: a lost answer never opens a second one.
  const id = useRef(ids.mint());
  const design = useDesign({
    api,
    key: hostKey,
    name: typed.name.trim() || words.newBuild.title,
    zone: typed.zone,
    ground: null,
    kit: null,
    start: startOf(typed, now),
  });
  const open = useMutation({
    mutationFn: (request: OpenRequest) => api.post<OpenedBuild>('/api/builds', request, 30_000),
    onSuccess: (answer) => {
      if (answer.kind === 'unreachable') return;
      id.current = ids.mint();
      if (answer.kind === 'ok') onOpened();
    },
  });
  const faults = buildFaults(typed, now);
  const said = words.newBuild;

  function source(): BuildSource | null {
    if (kind === 'empty') return { kind };
    if (kind === 'tables') return readTyped(tables).ok ? tablesSource(tables) : null;
    return design.request ? { kind, ...design.request } : null;
  }

  function submit(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    const from = source();
    const request = from && openRequest(typed, from, id.current, now);
    if (request) {
      open.mutate(request);
      return;
    }
    requestAnimationFrame(() => focusField(element.current?.querySelector('[aria-invalid]')));
  }

  if (open.data?.kind === 'ok') {
    return (
      <OpenedBuildLinks
        name={typed.name}
        links={open.data.value.links}
        onAnother={() => open.reset()}
      />
    );
  }
  const wrong = tried && (Object.keys(faults).length > 0 || source() === null);
  return (
    <details className="quiet new-build-open">
      <summary>
        <h2>{said.title}</h2>
      </summary>
      <form ref={element} className="new-build stack-wide" onSubmit={submit} noValidate>
        <BuildFields
          typed={typed}
          faults={tried ? faults : {}}
          now={now}
          onChange={(change) => setTyped({ ...typed, ...change })}
        />
        <fieldset className="sources">
          <legend>{said.source}</legend>
          {(Object.keys(said.sources) as Kind[]).map((one) => (
            <label key={one} className="tick">
              <input
                type="radio"
                name="source"
                checked={kind === one}
                onChange={() => setKind(one)}
              />
              {said.sources[one]}
            </label>
          ))}
        </fieldset>
        {kind === 'bridge' ? (
          <>
            <div className="ground-desk">
              <div className="ground-form">
                <DesignFields design={design} strict={tried} />
              </div>
              <div className="ground-answer stack-wide">
                <DesignAnswer design={design} />
              </div>
            </div>
            <DesignMore design={design} />
          </>
        ) : null}
        {kind === 'tables' ? (
          <TablesFields tables={tables} strict={tried} onChange={setTables} />
        ) : null}
        <div className="new-build-send stack">
          <div role="status" className="stack">
            {wrong && kind === 'bridge' ? <LeftOpen design={design} /> : null}
            {wrong ? <p className="warn">{said.check}</p> : null}
            {open.isPending ? <p>{said.opening}</p> : null}
            {open.data?.kind === 'unreachable' ? (
              <p className="warn">{words.said.unreachable}</p>
            ) : null}
            {open.data?.kind === 'refused' ? (
              <>
                <p className="warn">{words.said.refused(open.data.refusal.sentence)}</p>
                <FaultList faults={open.data.refusal.faults ?? []} />
              </>
            ) : null}
          </div>
          <p>
            <Button type="submit" look="solid" disabled={open.isPending}>
              {said.open}
            </Button>
          </p>
        </div>
      </form>
    </details>
  );
}
