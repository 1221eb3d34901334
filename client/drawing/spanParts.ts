import type { Span } from '#domain/progress/span.ts';
import type { BuildState } from '#domain/progress/state.ts';
import type { Bank } from '#domain/tasks/effect.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { SpanGeometry } from './spanGeometry.ts';

/** What can be touched: a bank, a bay (1 leads), or the nose. */
export type SpanPart =
  | { readonly kind: 'bank'; readonly bank: Bank }
  | { readonly kind: 'bay'; readonly bay: number }
  | { readonly kind: 'nose' };

/** All parts from the near bank to the far one, in the order in which they lie. */
export function spanParts({ bays, nose }: SpanGeometry): SpanPart[] {
  return [
    { kind: 'bank', bank: 'near' },
    ...bays.map(({ bay }) => ({ kind: 'bay' as const, bay })).reverse(),
    ...(nose.length > 0 ? [{ kind: 'nose' as const }] : []),
    { kind: 'bank', bank: 'far' },
  ];
}

/** The part nearest to a place, metres ahead of the front rollers: a mitten need not hit it exactly. */
export function partAt(geometry: SpanGeometry, x: number): SpanPart {
  const bay = geometry.bays.find(({ from, to }) => x >= from && x < to);
  if (bay) return { kind: 'bay', bay: bay.bay };
  if (geometry.nose.some(({ from, to }) => x >= from && x <= to)) return { kind: 'nose' };
  return { kind: 'bank', bank: x < geometry.near.x + geometry.rollers.far / 2 ? 'near' : 'far' };
}

/** Whether two parts are the same one. */
export function samePart(one: SpanPart, other: SpanPart): boolean {
  if (one.kind === 'bay' && other.kind === 'bay') return one.bay === other.bay;
  if (one.kind === 'bank' && other.kind === 'bank') return one.bank === other.bank;
  return one.kind === 'nose' && other.kind === 'nose';
}

/** The tasks of a part: at work and stopped first, then to come, then done. */
export function tasksOfPart(state: BuildState, span: Span, part: SpanPart): Task[] {
  const ids = idsOf(state, span, part);
  const rank = { stopped: 0, 'at-work': 1, 'to-come': 2, done: 3 };
  const rankOf = ({ id }: Task): number => rank[state.tasks[id]?.status ?? 'to-come'];
  return state.work.tasks
    .filter(({ id }) => ids.has(id))
    .sort((a, b) => rankOf(a) - rankOf(b) || a.number - b.number);
}

function idsOf(state: BuildState, span: Span, part: SpanPart): Set<string> {
  const { tasks, zones } = state.work;
  if (part.kind === 'nose') {
    const off = tasks.filter(({ effect }) => effect?.kind === 'nose-off').map(({ id }) => id);
    return new Set([...span.nose.flatMap((section) => section.tasks), ...off]);
  }
  if (part.kind === 'bay') {
    const bay = span.bays.find((one) => one.bay === part.bay);
    const pieces = [...(bay?.pieces ?? []), bay?.deck, bay?.kerb].flatMap((piece) =>
      piece ? [piece.task] : [],
    );
    const placed = tasks.filter(({ place }) => place?.bays?.includes(part.bay));
    return new Set([...pieces, ...placed.map(({ id }) => id)]);
  }
  const bankOf = new Map(zones.map(({ id, bank }) => [id, bank]));
  const ofBridge = new Set(['nose', 'bay', 'brace', 'deck', 'kerb', 'nose-off']);
  return new Set(
    tasks
      .filter(({ effect, place, zones: own, keepOff }) => {
        if (effect && 'bank' in effect) return effect.bank === part.bank;
        if (place?.bank) return place.bank === part.bank;
        if (keepOff || (effect && ofBridge.has(effect.kind))) return false;
        return own.some((zone) => bankOf.get(zone) === part.bank);
      })
      .map(({ id }) => id),
  );
}
