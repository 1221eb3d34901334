import { scaleLinear } from 'd3-scale';
import { useId, useMemo } from 'react';
import type { BuildState } from '#domain/progress/state.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import type { Task } from '#domain/tasks/task.ts';
import { Patterns } from './Patterns.tsx';
import { SpanBridge } from './SpanBridge.tsx';
import { SpanSite } from './SpanSite.tsx';
import { spanGeometry } from './spanGeometry.ts';
import type { SpanView } from './spanView.ts';
import { useWidth } from './useWidth.ts';
import './drawing.css';

/** Metres of bridge shown to each side of the place of work. */
const reach = 17;

/** The piece of the bridge where a task is done, to scale. Nothing for a task that has no place on it. */
export function BridgeGlimpse({
  state,
  task,
}: {
  readonly state: BuildState;
  readonly task: Task;
}) {
  const id = useId();
  const [box, width] = useWidth<HTMLDivElement>(330);
  const span = useMemo(() => spanOf(state), [state]);
  const { bridge, ground } = state;
  const bay =
    task.place?.bays?.[0] ?? (task.effect && 'bay' in task.effect ? task.effect.bay : null);
  const onNose = task.effect?.kind === 'nose' || task.effect?.kind === 'nose-off';
  const moves = task.effect?.kind === 'move';
  if (!bridge || (bay === null && !onNose && !moves)) return null;

  const geometry = spanGeometry(ground, bridge, span);
  const place = geometry.bays.find((one) => one.bay === bay);
  const middle = place
    ? (place.from + place.to) / 2
    : onNose
      ? geometry.tip - bridge.noseLength / 2
      : 0;
  const scale = width / (2 * reach);
  const top = 30;
  const height = top + (geometry.highest + 1.2) * scale;
  const view: SpanView = {
    geometry,
    id,
    width,
    height,
    x: scaleLinear()
      .domain([middle - reach, middle + reach])
      .range([0, width]),
    y: scaleLinear().domain([geometry.highest, -1.2]).range([top, height]),
    scale,
    wide: false,
    tall: 1,
  };
  return (
    <div ref={box} className="glimpse">
      <svg viewBox={`0 0 ${width} ${height}`} height={height} width="100%" aria-hidden="true">
        <Patterns id={id} />
        <SpanSite view={view} plain />
        <SpanBridge view={view} bridge={bridge} span={span} chosenBay={bay} />
      </svg>
    </div>
  );
}
