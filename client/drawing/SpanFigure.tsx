import { useId, useMemo, useState } from 'react';
import type { BuildState } from '#domain/progress/state.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import { zonesNow } from '#domain/progress/views/zonesNow.ts';
import { words } from '../words/words.ts';
import { Patterns } from './Patterns.tsx';
import { PhaseStrip } from './PhaseStrip.tsx';
import { SpanBridge } from './SpanBridge.tsx';
import { SpanMarks } from './SpanMarks.tsx';
import { SpanPartPanel } from './SpanPartPanel.tsx';
import { SpanSite } from './SpanSite.tsx';
import { type NamedZone, SpanZones, zonesHeight } from './SpanZones.tsx';
import { spanGeometry } from './spanGeometry.ts';
import { partAt, type SpanPart, spanParts } from './spanParts.ts';
import { phone, spanView } from './spanView.ts';
import { spanSentences } from './spanWords.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Props = {
  readonly state: BuildState;
  /** Called with a task's id when it is chosen among those of a part; without it tasks are only shown. */
  readonly onTask?: (task: string) => void;
};

/**
 * The bridge from the side, to scale: the map of the build. Touching a part shows its tasks. For a build without a
 * bridge the phases of its work are drawn instead.
 */
export function SpanFigure({ state, onTask }: Props) {
  const { bridge } = state;
  if (!bridge) return <PhaseStrip state={state} />;
  return <BridgeFigure state={state} bridge={bridge} {...(onTask ? { onTask } : {})} />;
}

type BridgeProps = Props & { readonly bridge: NonNullable<BuildState['bridge']> };

function BridgeFigure({ state, bridge, onTask }: BridgeProps) {
  const id = useId();
  const span = useMemo(() => spanOf(state), [state]);
  const zones = useMemo(() => namedZones(state), [state]);
  const [box, width] = useWidth<HTMLElement>(1000);
  const [part, setPart] = useState<SpanPart | null>(null);
  const wide = width >= phone;
  const geometry = useMemo(
    () => spanGeometry(state.ground, bridge, span, wide),
    [state.ground, bridge, span, wide],
  );
  const view = spanView(geometry, id, width, wide ? zonesHeight + 52 : 40);
  const sentences = spanSentences(state, span);
  const said = words.span;
  const inWords = zones.filter(({ people, closed }) => people > 0 || closed);

  return (
    <figure ref={box} className="span">
      <div className="span-drawing">
        <svg
          className="drawing"
          viewBox={`0 0 ${width} ${view.height}`}
          height={view.height}
          role="img"
          aria-label={sentences.join(' ')}
        >
          <Patterns id={id} />
          <SpanSite
            view={view}
            gap={state.ground?.gap ?? bridge.gap}
            rise={state.water.rise ?? state.ground?.water.rise ?? null}
          />
          <SpanBridge
            view={view}
            bridge={bridge}
            span={span}
            chosenBay={part?.kind === 'bay' ? part.bay : null}
          />
          <SpanMarks view={view} bridge={bridge} span={span} />
          {wide ? (
            <SpanZones view={view} zones={zones} seated={span.seated.near && span.seated.far} />
          ) : null}
        </svg>
        {/* Laid over the drawing, so that the drawing keeps its own words. */}
        <button
          type="button"
          className="span-touch"
          aria-label={`${said.name(state.name)}. ${said.touch}`}
          onClick={(event) => {
            // From the keyboard there is no place touched: begin with the bay that is at work.
            const edge = event.currentTarget.getBoundingClientRect().left;
            const atWork = span.bays.find(({ whole }) => whole === 'at-work')?.bay ?? 1;
            setPart(
              event.detail === 0
                ? { kind: 'bay', bay: atWork }
                : partAt(geometry, view.x.invert(event.clientX - edge)),
            );
          }}
        />
      </div>
      <figcaption className="stack span-caption">
        <p className={wide ? 'out-of-sight' : ''}>{sentences.join(' ')}</p>
        {inWords.length > 0 ? (
          <p className={wide ? 'out-of-sight' : ''}>
            {said.zonesTitle}:{' '}
            {inWords
              .map(({ name, people, closed }) =>
                closed ? said.zoneClosed(name) : said.zoneShort(name, people),
              )
              .join(', ')}
            .
          </p>
        ) : null}
        {geometry.heightsKnown ? null : <p className="second small">{said.heightsGuessed}</p>}
        {view.tall === 1 ? null : <p className="second small">{said.twiceAsTall}</p>}
      </figcaption>
      {part ? (
        <SpanPartPanel
          state={state}
          span={span}
          part={part}
          parts={spanParts(geometry)}
          onPart={setPart}
          {...(onTask ? { onTask } : {})}
        />
      ) : null}
    </figure>
  );
}

function namedZones(state: BuildState): NamedZone[] {
  const names = new Map(state.work.zones.map(({ id, name }) => [id, name]));
  return zonesNow(state).map(({ zone, people, closedBy }) => ({
    zone,
    name: names.get(zone) ?? zone,
    people,
    closed: closedBy !== null,
  }));
}
