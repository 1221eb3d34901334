import type { Author, Command, CommandBody, CommandKind } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import type { Entry } from '#domain/progress/entry.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import type { Refusal } from '#domain/refusal.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Task } from '#domain/tasks/task.ts';
import type { Crew, Link, Work } from '#domain/tasks/work.ts';

// A small invented site. Two girder crews and an attached medic; pegs, a panel on each side, a lift that takes both
// crews, a hold, a move that closes two zones, a deck bay, unloading on the side, a hold that opens.

export const leader: Author = { role: 'leader', name: 'Lt Moor' };
export const log: Author = { role: 'log', name: 'Cpl Reed' };
export const hill: Author = { role: 'chief', name: 'Sgt Hill', crew: 'left' };
export const dale: Author = { role: 'chief', name: 'Sgt Dale', crew: 'right' };
export const inspector: Author = { role: 'inspector', name: 'WO Finch' };
export const commander: Author = { role: 'commander', name: 'Maj Stone' };

type Making = Partial<Task> & { readonly id: string; readonly number: number };

export function task(making: Making): Task {
  return {
    name: making.id,
    phase: '',
    needs: [need('left', 6)],
    minutes: { quick: 4, likely: 5, slow: 12 },
    zones: [],
    keepOff: false,
    opens: false,
    cautions: [],
    tools: [],
    loads: [],
    ...making,
  };
}

export function need(crew: string, people: number): Task['needs'][number] {
  return { anyOf: [crew], people: { least: Math.min(people, 3), usual: people, most: people + 2 } };
}

export function comesAfter(to: string, ...before: readonly string[]): Link[] {
  return before.map((from) => ({ from, to, counts: 'finish', wait: 0 }));
}

export function crew(id: string, name: string, people: number, more: Partial<Crew> = {}): Crew {
  return { id, name, people, skills: [], attached: false, ...more };
}

export const siteWork: Work = {
  tasks: [
    task({ id: 'pegs', number: 1, name: 'Pegs', phase: 'Site', zones: ['assembly'] }),
    task({
      id: 'panel-left',
      number: 2,
      name: 'Panel left',
      phase: 'Bays',
      zones: ['assembly'],
      loads: ['truck'],
      effect: { kind: 'bay', bay: 1, side: 'left' },
    }),
    task({
      id: 'panel-right',
      number: 3,
      name: 'Panel right',
      phase: 'Bays',
      needs: [need('right', 6)],
      zones: ['assembly'],
      loads: ['truck'],
      effect: { kind: 'bay', bay: 1, side: 'right' },
    }),
    task({
      id: 'lift',
      number: 4,
      name: 'Lift',
      phase: 'Bays',
      needs: [need('left', 4), need('right', 4)],
      zones: ['assembly'],
      effect: { kind: 'brace', bay: 1 },
    }),
    task({
      id: 'check',
      number: 5,
      name: 'Check before the move',
      phase: 'Move',
      needs: [],
      minutes: { quick: 3, likely: 4, slow: 9 },
      hold: {
        measures: [
          { key: 'level', name: 'difference of level', unit: 'mm', least: 0, most: 5 },
          { key: 'pins', name: 'all pins home', unit: 'yes' },
          { key: 'wind', name: 'wind', unit: 'm/s', most: 9 },
        ],
        lapsesOn: ['move', 'relief', 'wind', 'halt'],
        redo: ['lift'],
      },
    }),
    task({
      id: 'move',
      number: 6,
      name: 'Move 1',
      phase: 'Move',
      needs: [need('left', 4)],
      minutes: { quick: 2, likely: 3, slow: 7 },
      zones: ['assembly', 'landing'],
      keepOff: true,
      effect: { kind: 'move', stage: 1, metres: 6, lands: true },
    }),
    task({
      id: 'deck',
      number: 7,
      name: 'Deck bay 1',
      phase: 'Deck',
      needs: [need('right', 6)],
      zones: ['assembly'],
      effect: { kind: 'deck', bays: [1] },
    }),
    task({
      id: 'unload',
      number: 8,
      name: 'Unload',
      phase: 'Stores',
      needs: [need('right', 3)],
      zones: ['stores'],
    }),
    task({
      id: 'open',
      number: 9,
      name: 'Inspect and open',
      phase: 'Finish',
      needs: [],
      opens: true,
      hold: { measures: [], lapsesOn: [], redo: [] },
    }),
  ],
  links: [
    ...comesAfter('panel-left', 'pegs'),
    ...comesAfter('panel-right', 'pegs'),
    ...comesAfter('lift', 'panel-left', 'panel-right'),
    ...comesAfter('check', 'lift'),
    ...comesAfter('move', 'check'),
    ...comesAfter('deck', 'move'),
    ...comesAfter('open', 'deck', 'unload'),
  ],
  crews: [
    crew('left', 'Left girder', 7, { chief: 'Sgt Hill' }),
    crew('right', 'Right girder', 7, { chief: 'Sgt Dale' }),
    crew('medic', 'Medic', 1, { attached: true }),
  ],
  zones: [
    { id: 'stores', name: 'stores', bank: 'near' },
    { id: 'assembly', name: 'assembly', bank: 'near' },
    { id: 'landing', name: 'landing', bank: 'far' },
  ],
  loads: [{ id: 'truck', name: 'Truck 1', arrives: 10 }],
};

/** A plan for any order of work whose needs each name one crew: usual people, one task after the other. */
export function planFor(work: Work): Plan {
  let clock = 0;
  const tasks = work.tasks.map((each) => {
    const start = clock;
    clock += each.minutes.likely;
    return {
      task: each.id,
      crews: each.needs.map(({ anyOf, people }) => ({ crew: anyOf[0]!, people: people.usual })),
      start,
      finish: clock,
      release: 0,
      stretch: 1,
      reason: { kind: 'start' as const },
    };
  });
  return {
    format: 'spanwright-plan',
    version: 1,
    tasks,
    handOvers: [],
    opening: work.tasks.find(({ opens }) => opens)?.id ?? work.tasks.at(-1)!.id,
    minutesToOpen: clock,
    lowerBound: clock,
    shape: 'pert',
  };
}

const start = Date.parse('2026-05-04T11:30:00Z');

/** The instant so many minutes after the start of the site's build. */
export function clock(minutes: number): string {
  return new Date(start + minutes * 60_000).toISOString();
}

let minted = 0;

export type Sending = {
  readonly by?: Author;
  /** Minutes after the start when it happened. */
  readonly at?: number;
  /** Minutes after the start when it was received; as it happened, if not given. */
  readonly received?: number;
  readonly saidBy?: string;
};

export function command<Kind extends CommandKind>(
  kind: Kind,
  body: CommandBody<Kind>,
  { by = leader, at = 0, received = at, saidBy }: Sending = {},
): Command {
  minted += 1;
  return {
    id: minted.toString(16).padStart(32, '0'),
    kind,
    body,
    by,
    ...(saidBy ? { saidBy } : {}),
    happenedAt: clock(at),
    receivedAt: clock(received),
  } as Command;
}

export function opening(work: Work = siteWork): Command {
  return command('open-build', {
    name: 'Larch Ford',
    unit: '2 Platoon',
    start: clock(0),
    askedFor: clock(330),
    zone: 'Europe/Berlin',
    confidence: 0.9,
    program: '0.1.0',
    ground: null,
    bridge: null,
    work,
  });
}

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) frozen(part);
  }
  return value;
}

/** A record being written: what was accepted, and the state it folds to. Every state is frozen, so that no fold may write into one. */
export class Site {
  readonly entries: Entry[] = [];
  state: BuildState = emptyBuild;

  /** Sends a command; null when it was accepted, else why not. */
  try(sent: Command): Refusal | null {
    const decision = decide(frozen(this.state), sent);
    if (!decision.ok) return decision.reason;
    for (const made of decision.value) {
      const entry: Entry = frozen({ ...made, number: this.state.number + 1 });
      this.entries.push(entry);
      this.state = frozen(evolve(this.state, entry));
    }
    return null;
  }

  /** Sends a command that must be accepted; its entry. */
  send<Kind extends CommandKind>(
    kind: Kind,
    body: CommandBody<Kind>,
    sending: Sending = {},
  ): Entry {
    return this.take(command(kind, body, sending));
  }

  take(sent: Command): Entry {
    const refused = this.try(sent);
    if (refused) throw new Error(`${sent.kind}: ${refused.code}: ${refused.sentence}`);
    return this.entries.at(-1)!;
  }

  /** Sends a command that must be refused; why. */
  refusal<Kind extends CommandKind>(
    kind: Kind,
    body: CommandBody<Kind>,
    sending: Sending = {},
  ): Refusal {
    const before = this.state;
    const refused = this.try(command(kind, body, sending));
    if (!refused) throw new Error(`${kind} was accepted.`);
    if (this.state !== before) throw new Error('A refusal changed the state.');
    return refused;
  }

  task(id: string): BuildState['tasks'][string] {
    const standing = this.state.tasks[id];
    if (!standing) throw new Error(`no task ${id}`);
    return standing;
  }

  /** Tells a task started and finished by each of its crews, by their chiefs. */
  finish(id: string, at = 0): void {
    const { needs } = this.state.work.tasks.find((each) => each.id === id)!;
    const crews = needs.flatMap(({ anyOf }) => anyOf);
    const chief = (crew: string) => ({ hill, dale })[crew === 'left' ? 'hill' : 'dale'];
    for (const each of crews)
      this.send('tell-started', { task: id, crew: each }, { by: chief(each), at });
    for (const each of crews)
      this.send('tell-finished', { task: id, crew: each }, { by: chief(each), at: at + 5 });
  }

  pass(id: string, at = 0): Entry {
    const values = id === 'check' ? { level: 2, pins: true, wind: 4 } : {};
    const body = { task: id, name: inspector.name, values, remark: '' };
    return this.send('pass-hold', body, { by: inspector, at });
  }

  /** Both crews off and the zones seen clear from both banks, for the move. */
  clear(at = 0): void {
    this.send('tell-off', { task: 'move', crew: 'left', off: 3, of: 7 }, { by: hill, at });
    this.send('tell-off', { task: 'move', crew: 'right', off: 7, of: 7 }, { by: dale, at });
    this.send('tell-clear', { task: 'move', bank: 'near', name: 'Cpl Ash', people: 12 }, { at });
    this.send('tell-clear', { task: 'move', bank: 'far', name: 'Cpl Elm', people: 3 }, { at });
  }
}

/** The site opened, with a plan in force. */
export function site(work: Work = siteWork): Site {
  const opened = new Site();
  opened.take(opening(work));
  opened.send('accept-plan', { work, plan: planFor(work), basis: 1, gain: '' });
  return opened;
}

/** The site with everything done and passed before the move. */
export function beforeMove(): Site {
  const built = site();
  for (const id of ['pegs', 'panel-left', 'panel-right', 'lift']) built.finish(id, 0);
  built.pass('check', 20);
  return built;
}
