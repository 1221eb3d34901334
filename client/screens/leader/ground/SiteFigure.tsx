import { useId } from 'react';
import type { Bridge } from '#domain/bridge/bridge.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { girderDepth } from '../../../drawing/girderDrawn.ts';
import { Patterns } from '../../../drawing/Patterns.tsx';
import { SeatedBridge } from '../../../drawing/SeatedBridge.tsx';
import { SiteBanks } from '../../../drawing/SiteBanks.tsx';
import { SiteMarks } from '../../../drawing/SiteMarks.tsx';
import { waterWords } from '../../../drawing/SpanSite.tsx';
import { siteProfile } from '../../../drawing/siteProfile.ts';
import { phone } from '../../../drawing/spanView.ts';
import { stripView, tallness } from '../../../drawing/stripView.ts';
import { useWidth } from '../../../drawing/useWidth.ts';
import { metres, upperFirst } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { siteNotes } from './siteNotes.ts';
import '../../../drawing/drawing.css';

type Props = {
  readonly ground: Ground;
  /** The bridge that answers it, drawn where it will lie; null while there is none. */
  readonly bridge: Bridge | null;
};

/** Pixels that the deepest bed may lie below the near bank. */
const deepest = 320;

/** Both banks, the gap and the water to scale as measured so far, and the bridge where it will lie. */
export function SiteFigure({ ground, bridge }: Props) {
  const id = useId();
  const [box, width] = useWidth<HTMLElement>(800);
  const wide = width >= phone;
  const site = siteProfile(ground, bridge ?? { gap: ground.gap, landsAt: ground.gap });
  const depth = bridge ? girderDepth(bridge) : 1.5;
  const behind = Math.max(ground.roomBehind ?? 0, bridge?.roomNeeded ?? 0, ground.gap / 4, 8);
  const [from, to] = [-behind - 3, site.far.x + Math.max(8, ground.gap / 6)];
  // A deep valley is drawn smaller, with more of its banks.
  const scale = Math.min(width / (to - from), deepest / (-site.bed * tallness(wide)));
  const more = (width / scale - (to - from)) / 2;
  const up = scale * tallness(wide);
  const view = stripView({
    id,
    width,
    wide,
    reach: { from: from - more, to: to + more },
    highest: Math.max(0, site.far.y) + depth,
    top: 0,
    above: 34,
    below: -site.bed * up + 44,
  });
  const notes = siteNotes(ground);
  return (
    <figure ref={box} className="span site-figure">
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${view.bottom}`}
        height={view.bottom}
        role="img"
        aria-label={words.ground.site(metres(ground.gap))}
      >
        <Patterns id={id} />
        <SiteBanks view={view} site={site} />
        {bridge ? <SeatedBridge view={view} bridge={bridge} ground={ground} site={site} /> : null}
        <SiteMarks
          view={view}
          ground={ground}
          bridge={bridge}
          site={site}
          over={view.y(Math.max(0, site.far.y) + depth) - 10}
        />
      </svg>
      <figcaption className="second small">
        {notes.length > 0 ? `${notes.join(' · ')}.` : ''}
        {site.heightsKnown ? '' : ` ${words.span.heightsGuessed}`}
        {wide ? '' : ` ${upperFirst(waterWords(ground.water.rise))}. ${words.span.twiceAsTall}`}
      </figcaption>
    </figure>
  );
}
