import { useId, useMemo } from 'react';
import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { emptyBuild } from '#domain/progress/state.ts';
import { spanOf } from '#domain/progress/views/span.ts';
import { Patterns } from '../../../drawing/Patterns.tsx';
import { SpanSite } from '../../../drawing/SpanSite.tsx';
import { spanGeometry } from '../../../drawing/spanGeometry.ts';
import { phone, spanView } from '../../../drawing/spanView.ts';
import { useWidth } from '../../../drawing/useWidth.ts';
import { metres } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import '../../../drawing/drawing.css';

/** Both banks, the gap and the water as measured so far, before any bridge answers them. */
export function SiteFigure({ ground }: { readonly ground: Ground }) {
  const id = useId();
  const [box, width] = useWidth<HTMLElement>(800);
  const geometry = useMemo(
    () => spanGeometry(ground, noBridge(ground.gap), spanOf(emptyBuild), width >= phone),
    [ground, width],
  );
  const view = spanView(geometry, id, width, 24);
  return (
    <figure ref={box} className="span">
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${view.height}`}
        height={view.height}
        role="img"
        aria-label={words.ground.site(metres(ground.gap))}
      >
        <Patterns id={id} />
        <SpanSite view={view} gap={ground.gap} rise={ground.water.rise} />
      </svg>
    </figure>
  );
}

/** Nothing built: what the geometry needs to place the banks. */
function noBridge(gap: number): Bridge {
  return {
    kit: { name: '', title: '', hash: '', notForUse: true },
    manner: 'launched',
    bays: 1,
    bayLength: 0,
    length: 0,
    nose: 0,
    noseLength: 0,
    bearing: { near: 0, far: 0 },
    loadClass: 0,
    gap,
    landsAt: gap,
    roomNeeded: 0,
    masses: { bay: 0, deck: 0, nose: 0 },
    stages: [],
    parts: [],
    unknowns: [],
  };
}
