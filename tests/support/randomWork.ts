import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Past, PastTask } from '#domain/schedule/past.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Need, Task } from '#domain/tasks/task.ts';
import type { Crew, Link, Work, Zone } from '#domain/tasks/work.ts';

export type RandomWorkOptions = {
  readonly tasks: number;
  /** Crews a, b, c ...; 0 for none. */
  readonly crews?: number;
  readonly zones?: number;
  /** Start-links, waits and negative waits besides plain links. */
  readonly waits?: boolean;
  readonly joint?: boolean;
  readonly keepOff?: boolean;
  /** Crews that come on late. */
  readonly hours?: boolean;
  /** The last crew goes again after so many minutes. */
  readonly lastCrewUntil?: number;
  readonly loads?: boolean;
  readonly holds?: boolean;
  /** One task somewhere opens. */
  readonly opens?: boolean;
  readonly skills?: boolean;
  /** Two kinds of things to hold, a few of each. */
  readonly equipment?: boolean;
  /** Some zones on the far bank, and minutes to get there. */
  readonly crossing?: boolean;
  /** Some people of a crew, and of a need, have a skill that the others do not have. */
  readonly skilled?: boolean;
  /** Crews that grow, shrink, go for a while and lend people to each other. */
  readonly strength?: boolean;
  /** Crews eat and rest. */
  readonly rests?: boolean;
  /** It gets dark, and some tasks want daylight. */
  readonly dark?: boolean;
};

type Draw = (least: number, most: number) => number;

function draws(seed: number): Draw {
  const random = xoroshiro128plus(seed);
  return (least, most) => uniformInt(random, least, most);
}

/** An order of work that can be planned: the same seed and options give the same one. Invented, of no real site. */
export function randomWork(seed: number, options: RandomWorkOptions): Work {
  const draw = draws(seed);
  const crews = Array.from({ length: options.crews ?? 0 }, (_, at) =>
    randomCrew(draw, at, options),
  );
  const zones = Array.from({ length: options.zones ?? 0 }, (_, at): Zone => {
    const room = draw(0, 2) === 0 ? {} : { room: draw(8, 20) };
    return { id: `z${at}`, name: `Zone ${at}`, bank: 'near', ...room };
  });
  const loads = options.loads
    ? [0, 1, 2].map((at) => ({ id: `l${at}`, name: `Load ${at}`, arrives: draw(0, 60) }))
    : [];
  const opens = options.opens ? draw(0, options.tasks - 1) : -1;
  const tasks = Array.from({ length: options.tasks }, (_, at): Task => {
    const likely = draw(0, 12) === 0 ? 0 : draw(1, 20);
    const wide = likely > 0 && draw(0, 1) === 0;
    const people = randomNeeds(draw, crews, options);
    const hold = options.holds && draw(0, 4) === 0;
    return {
      id: `t${at}`,
      number: at + 1,
      name: `Task ${at}`,
      phase: '',
      needs: people,
      minutes: wide
        ? { quick: likely / 2, likely, slow: likely + draw(0, 10) }
        : { quick: likely, likely, slow: likely },
      zones: zones.filter(() => draw(0, 3) === 0).map(({ id }) => id),
      keepOff: options.keepOff === true && draw(0, 4) === 0,
      ...(hold ? { hold: { measures: [], lapsesOn: [], redo: [] } } : {}),
      opens: at === opens,
      cautions: [],
      tools: [],
      loads: loads.filter(() => draw(0, 5) === 0).map(({ id }) => id),
    };
  });
  const work = { tasks, links: randomLinks(draw, options), crews, zones, loads };
  const equipped = options.equipment ? withEquipment(draw, work) : work;
  const able = options.skilled ? withSkilled(draw, equipped) : equipped;
  const changing = options.strength ? withStrength(draw, able) : able;
  const resting = options.rests ? withRests(draw, changing) : changing;
  const apart = options.crossing ? withCrossing(draw, resting) : resting;
  return options.dark ? withDark(draw, apart) : apart;
}

/** Every crew has a few who can weld and a few who can dive; tasks want one or two of them among their people. */
function withSkilled(draw: Draw, work: Work): Work {
  const crews = work.crews.map((crew) => ({
    ...crew,
    skilled: ['weld', 'dive'].map((skill) => ({ skill, people: draw(2, 3) })),
  }));
  const tasks = work.tasks.map((task) => ({
    ...task,
    needs: task.needs.map((need): Need => {
      const kind = need.skill || need.people.usual < 2 ? 0 : draw(0, 4);
      const { usual, most } = need.people;
      if (kind === 1) return { ...need, people: { least: 1, usual, most }, skill: 'weld' };
      if (kind > 2) return need;
      const some = ['weld', 'dive'].filter(() => draw(0, 2) === 0);
      const wanted = some.map((skill) => ({ skill, people: draw(1, Math.min(2, usual)) }));
      return { ...need, ...(kind > 0 && wanted.length > 0 ? { with: wanted } : {}) };
    }),
  }));
  return { ...work, crews, tasks };
}

/** In the end every crew has people enough for any task. */
function withStrength(draw: Draw, work: Work): Work {
  const crews = work.crews.map((crew, at): Crew => {
    const kind = draw(0, 2);
    if (kind === 0) {
      const first = draw(5, 60);
      const steps = [
        { from: first, people: draw(0, 9) },
        { from: first + draw(1, 60), people: draw(4, 9) },
      ];
      return { ...crew, strength: steps.slice(draw(0, 1)) };
    }
    const other = work.crews[(at + draw(1, 4)) % work.crews.length]!;
    if (kind === 1 || other.id === crew.id) return crew;
    const from = draw(0, 60) + draw(0, 1) / 2;
    const lent = { crew: other.id, people: draw(1, 3), from, to: from + draw(5, 60) };
    return { ...crew, lent: [lent] };
  });
  return { ...work, crews };
}

/** Rests of whole crews, and of one or two people where a crew has them to spare. */
function withRests(draw: Draw, work: Work): Work {
  const crews = work.crews.map((crew) => {
    const first = draw(0, 40);
    const second = draw(first + 25, 120);
    const spare = crew.strength ? 0 : crew.people - (crew.lent?.[0]?.people ?? 0) - 1;
    const rests = [first, second].map((from) => ({
      from,
      to: from + draw(1, 20) + draw(0, 1) / 4,
      ...(from % 3 === 0 && spare > 0 ? { people: Math.min(spare, 1 + (from % 2)) } : {}),
    }));
    return draw(0, 3) === 0 ? crew : { ...crew, rests: rests.slice(draw(0, 1)) };
  });
  return { ...work, crews };
}

function withCrossing(draw: Draw, work: Work): Work {
  const banks = ['near', 'far', 'over'] as const;
  const zones = work.zones.map((zone) => ({ ...zone, bank: banks[draw(0, 2)]! }));
  return { ...work, zones, crossing: draw(1, 24) / 2 };
}

function withDark(draw: Draw, work: Work): Work {
  const dusk = draw(-20, 60);
  const dawn = dusk + draw(10, 80) + draw(0, 3) / 7;
  const spells = [
    { from: dusk, to: dawn },
    { from: dawn + 500, to: dawn + 560 },
  ].slice(0, draw(1, 2));
  const tasks = work.tasks.map((task) => (draw(0, 4) === 0 ? { ...task, daylight: true } : task));
  return { ...work, tasks, dark: { spells, factor: draw(4, 8) / 4 } };
}

function withEquipment(draw: Draw, work: Work): Work {
  const equipment = ['jack', 'winch'].map((id) => ({ id, name: id, count: draw(1, 3) }));
  const tasks = work.tasks.map((task) => {
    const held = equipment.filter(() => draw(0, 2) === 0);
    return { ...task, equipment: held.map(({ id, count }) => ({ id, count: draw(1, count) })) };
  });
  return { ...work, equipment, tasks };
}

function randomCrew(draw: Draw, at: number, options: RandomWorkOptions): Crew {
  const late = options.hours && at > 0 && draw(0, 1) === 0 ? { from: draw(0, 40) } : {};
  const last = at > 0 && at === (options.crews ?? 0) - 1 && options.lastCrewUntil !== undefined;
  const early = last ? { to: options.lastCrewUntil } : {};
  return {
    id: String.fromCharCode(97 + at),
    name: `Crew ${at}`,
    people: draw(4, 8),
    ...late,
    ...early,
    skills: options.skills && (at === 0 || draw(0, 1) === 0) ? ['rig'] : [],
    attached: false,
  };
}

function randomNeeds(draw: Draw, crews: readonly Crew[], options: RandomWorkOptions): Need[] {
  const usual = draw(0, 9) === 0 ? 0 : draw(1, 8);
  const least = usual === 0 ? 0 : draw(1, Math.min(4, usual));
  const people = { least, usual, most: usual + draw(0, 2) };
  if (crews.length === 0) {
    return [{ anyOf: [], people }];
  }
  if (options.joint && crews.length > 1 && draw(0, 3) === 0) {
    const first = draw(0, crews.length - 2);
    return [crews[first]!, crews[draw(first + 1, crews.length - 1)]!].map(({ id }) => ({
      anyOf: [id],
      people: { least: 1, usual: draw(1, 4), most: 4 },
    }));
  }
  if (options.skills && usual > 0 && draw(0, 3) === 0) {
    return [{ anyOf: [], people, skill: 'rig' }];
  }
  const named = crews.filter(() => draw(0, 2) === 0).map(({ id }) => id);
  return [{ anyOf: named, people }];
}

/** Links lead from lower to higher rows, mostly from rows close by. */
function randomLinks(draw: Draw, options: RandomWorkOptions): Link[] {
  const links: Link[] = [];
  for (let to = 1; to < options.tasks; to += 1) {
    const seen = new Set<number>();
    for (let turn = draw(0, 2); turn > 0; turn -= 1) {
      seen.add(draw(Math.max(0, to - 12), to - 1));
    }
    for (const from of seen) {
      const odd = options.waits && draw(0, 3) === 0;
      links.push({
        from: `t${from}`,
        to: `t${to}`,
        counts: odd && draw(0, 1) === 0 ? 'start' : 'finish',
        wait: odd ? draw(-15, 15) : 0,
      });
    }
  }
  return links;
}

/** A past as it may stand `now` minutes into the plan: what should be done mostly is, some is at work, some stopped. */
export function randomPast(seed: number, plan: Plan, now: number): Past {
  const draw = draws(seed);
  const tasks: PastTask[] = [];
  for (const { task, start, finish, crews } of plan.tasks) {
    if (start >= now) {
      continue;
    }
    if (finish <= now && draw(0, 5) > 0) {
      tasks.push({ task, status: 'done', start, finish, crews });
    } else if (draw(0, 3) === 0) {
      tasks.push({ task, status: 'stopped', start, part: draw(0, 9) / 10, crews });
    } else {
      tasks.push({ task, status: 'at-work', start, crews });
    }
  }
  return { now, tasks };
}
