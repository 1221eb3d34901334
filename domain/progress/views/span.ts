import type { Bank } from '../../tasks/effect.ts';
import type { Task } from '../../tasks/task.ts';
import type { Piece, Span, SpanBay, SpanNose } from '../span.ts';
import type { BuildState, TaskStatus } from '../state.ts';
import { balanceOf } from './balance.ts';

/** The bridge as it stands, from what is told done alone. Empty where no task says what it adds to a bridge. */
export function spanOf(state: BuildState): Span {
  const bays = baysOf(state);
  const nose = noseOf(state);
  const moves = state.work.tasks.flatMap(({ id, effect }) =>
    effect?.kind === 'move' ? [{ task: id, ...effect, done: isDone(state, id) }] : [],
  );
  const metres = (some: typeof moves) => some.reduce((sum, move) => sum + move.metres, 0);
  const moved = metres(moves.filter(({ done }) => done));
  const landed = moves.some(({ done, lands }) => done && lands);
  const next = moves.filter(({ done }) => !done).toSorted((a, b) => a.stage - b.stage)[0];
  return {
    nose,
    bays,
    moved,
    toMove: metres(moves),
    balance: landed ? null : balanceOf(state.bridge, nose, bays, moved),
    landed,
    seated: { near: seated(state, 'near'), far: seated(state, 'far') },
    ramps: { near: onBank(state, 'ramp', 'near'), far: onBank(state, 'ramp', 'far') },
    approaches: { near: onBank(state, 'approach', 'near'), far: onBank(state, 'approach', 'far') },
    nextMove: next ? { task: next.task, metres: next.metres, lands: next.lands } : null,
  };
}

function statusOf(state: BuildState, task: string): TaskStatus {
  return state.tasks[task]?.status ?? 'to-come';
}

function isDone(state: BuildState, task: string): boolean {
  return statusOf(state, task) === 'done';
}

/** Done when all are; stopped when one is; at work when any is, or some are done. */
function wholeOf(statuses: readonly TaskStatus[]): TaskStatus {
  if (statuses.length > 0 && statuses.every((status) => status === 'done')) return 'done';
  if (statuses.includes('at-work')) return 'at-work';
  if (statuses.includes('stopped')) return 'stopped';
  return statuses.includes('done') ? 'at-work' : 'to-come';
}

function pieceOf(state: BuildState, { id }: Task): Piece {
  return { task: id, status: statusOf(state, id) };
}

function baysOf(state: BuildState): SpanBay[] {
  const numbers = new Set<number>();
  for (let bay = 1; bay <= (state.bridge?.bays ?? 0); bay += 1) numbers.add(bay);
  for (const { effect } of state.work.tasks) {
    if (effect?.kind === 'bay' || effect?.kind === 'brace') numbers.add(effect.bay);
    if (effect?.kind === 'deck' || effect?.kind === 'kerb')
      for (const bay of effect.bays) numbers.add(bay);
  }
  return [...numbers].toSorted((a, b) => a - b).map((bay) => bayOf(state, bay));
}

function bayOf(state: BuildState, bay: number): SpanBay {
  const { tasks } = state.work;
  const pieces = tasks
    .filter(
      ({ effect }) => (effect?.kind === 'bay' || effect?.kind === 'brace') && effect.bay === bay,
    )
    .map((task) => pieceOf(state, task));
  const covers = (kind: 'deck' | 'kerb') => {
    const task = tasks.find(({ effect }) => effect?.kind === kind && effect.bays.includes(bay));
    return task ? pieceOf(state, task) : null;
  };
  const whole = wholeOf(pieces.map(({ status }) => status));
  return { bay, pieces, whole, deck: covers('deck'), kerb: covers('kerb') };
}

function noseOf(state: BuildState): SpanNose[] {
  const { tasks } = state.work;
  const numbers = tasks.flatMap(({ effect }) => (effect?.kind === 'nose' ? [effect.section] : []));
  return [...new Set(numbers)]
    .toSorted((a, b) => a - b)
    .map((section) => {
      const ids = tasks
        .filter(({ effect }) => effect?.kind === 'nose' && effect.section === section)
        .map(({ id }) => id);
      const off = tasks.some(
        ({ id, effect }) =>
          effect?.kind === 'nose-off' && effect.sections.includes(section) && isDone(state, id),
      );
      return { section, whole: wholeOf(ids.map((id) => statusOf(state, id))), off, tasks: ids };
    });
}

function seated(state: BuildState, bank: Bank): boolean {
  return state.work.tasks.some(
    ({ id, effect }) => effect?.kind === 'seated' && effect.bank === bank && isDone(state, id),
  );
}

function onBank(state: BuildState, kind: 'ramp' | 'approach', bank: Bank): TaskStatus | null {
  const statuses = state.work.tasks
    .filter(({ effect }) => effect?.kind === kind && effect.bank === bank)
    .map(({ id }) => statusOf(state, id));
  return statuses.length > 0 ? wholeOf(statuses) : null;
}
