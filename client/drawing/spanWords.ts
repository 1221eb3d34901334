import type { Span } from '#domain/progress/span.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { metres } from '../words/units.ts';
import { words } from '../words/words.ts';
import { balanceWords } from './SpanMarks.tsx';
import { waterWords } from './SpanSite.tsx';
import type { SpanPart } from './spanParts.ts';

/** What the side view shows, in sentences: its text alternative. */
export function spanSentences(state: BuildState, span: Span): string[] {
  const said = words.span.alternative;
  const done = span.bays.filter(({ whole }) => whole === 'done').length;
  const atWork = span.bays.filter(({ whole }) => whole === 'at-work').map(({ bay }) => bay);
  const decked = span.bays.filter(({ deck }) => deck?.status === 'done').length;
  const left = state.bridge ? state.bridge.landsAt - span.moved : 0;
  return [
    said.bays(done, span.bays.length),
    ...(atWork.length > 0 ? [said.atWork(atWork.map(words.span.parts.bay).join(', '))] : []),
    said.moved(metres(span.moved), metres(span.toMove)),
    ...(span.balance === null ? [] : [`${sentence(balanceWords(span.balance))}.`]),
    ...seatedWords(span, left),
    ...(decked > 0 ? [said.deck(decked, span.bays.length)] : []),
    `${sentence(waterWords(state.water.rise ?? state.ground?.water.rise ?? null))}.`,
  ];
}

function seatedWords({ seated, landed, moved }: Span, left: number): string[] {
  const said = words.span.alternative;
  if (seated.near && seated.far) return [said.seated];
  if (seated.near || seated.far) return [said.seatedOne(seated.near ? 'near' : 'far')];
  if (landed) return [said.landed];
  return moved > 0 && left > 0 ? [`${sentence(words.span.toLand(metres(left)))}.`] : [];
}

/** The name of a part as a heading. */
export function partName(part: SpanPart): string {
  const said = words.span.parts;
  if (part.kind === 'bay') return said.bay(part.bay);
  if (part.kind === 'nose') return said.nose;
  return part.bank === 'near' ? said.near : said.far;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
