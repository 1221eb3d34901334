import { describe, expect, it } from 'vitest';
import type { CommandBody } from '#domain/progress/command.ts';
import type { Work } from '#domain/tasks/work.ts';
import {
  clock,
  comesAfter,
  hill,
  log,
  opening,
  planFor,
  Site,
  site,
  siteWork,
  task,
} from './site.ts';

function accept(work: Work, basis: number): CommandBody<'accept-plan'> {
  return { work, plan: planFor(work), basis, gain: '' };
}

const without = (id: string): Work => ({
  ...siteWork,
  tasks: siteWork.tasks.filter((each) => each.id !== id),
  links: siteWork.links.filter(({ from, to }) => from !== id && to !== id),
});

describe('opening a build', () => {
  it('sets tasks, crews and loads to what the order of work says', () => {
    const given = new Site();
    given.take(opening());
    expect(given.state).toMatchObject({
      name: 'Larch Ford',
      number: 1,
      workNumber: 1,
      plan: null,
      planCount: 0,
      crews: { left: { fit: 7, toldAt: null }, medic: { fit: 1 } },
      loads: { truck: { status: 'expected', at: clock(10) } },
    });
    expect(Object.keys(given.state.tasks)).toEqual(siteWork.tasks.map(({ id }) => id));
  });

  it('may come before the order of work is known', () => {
    const given = new Site();
    given.take(opening({ tasks: [], links: [], crews: [], zones: [], loads: [] }));
    expect(given.state.number).toBe(1);
  });

  it('is refused with a faulty order of work', () => {
    const loop = { ...siteWork, links: [...siteWork.links, ...comesAfter('pegs', 'lift')] };
    expect(new Site().try(opening(loop))?.code).toBe('loop-in-order');
  });
});

describe('accepting a plan', () => {
  it('puts work and plan in force', () => {
    const given = new Site();
    given.take(opening());
    given.send('accept-plan', accept(siteWork, 1), { at: 3 });
    expect(given.state).toMatchObject({ planCount: 1, planAcceptedAt: clock(3), workNumber: 2 });
    expect(given.state.plan?.opening).toBe('open');
  });

  it('is the leader’s', () => {
    const refused = site().refusal('accept-plan', accept(siteWork, 2), { by: log });
    expect(refused.code).toBe('role-cannot');
  });

  it('is refused when work, crews or loads have changed since it was made', () => {
    const given = site();
    given.send('tell-strength', { crew: 'left', fit: 5 }, { by: hill });
    expect(given.refusal('accept-plan', accept(siteWork, 2)).code).toBe('plan-stale');
    given.send('accept-plan', accept(siteWork, 3));
    given.send('tell-load-late', { load: 'truck', minutes: 5, why: '' });
    expect(given.refusal('accept-plan', accept(siteWork, 4)).code).toBe('plan-stale');
  });

  it('is not stale by ticks, counts that change nothing, wind or water', () => {
    const given = site();
    given.finish('pegs');
    given.send('tell-strength', { crew: 'left', fit: 7 }, { by: hill });
    given.send('tell-wind', { speed: 3 });
    given.send('tell-water', { rise: 0, level: null });
    given.send('accept-plan', accept(siteWork, 2));
    expect(given.state.planCount).toBe(2);
  });

  it('is refused when plan and work name different tasks, crews or openings', () => {
    const given = site();
    const plan = planFor(siteWork);
    const refuse = (changed: Partial<typeof plan>) =>
      given.refusal('accept-plan', {
        ...accept(siteWork, 2),
        plan: { ...plan, ...changed },
      });
    const [first, ...rest] = plan.tasks;
    const misfit = (of: string) => ({ code: 'plan-does-not-fit', of: [of] });
    expect(refuse({ tasks: rest })).toMatchObject(misfit('pegs'));
    expect(refuse({ tasks: [first!, ...plan.tasks] })).toMatchObject(misfit('pegs'));
    expect(refuse({ tasks: [{ ...first!, finish: -1 }, ...rest] })).toMatchObject(misfit('pegs'));
    const strangers = [{ crew: 'strangers', people: 4 }];
    expect(refuse({ tasks: [{ ...first!, crews: strangers }, ...rest] })).toMatchObject(
      misfit('strangers'),
    );
    expect(refuse({ opening: 'nothing' })).toMatchObject(misfit('nothing'));
    const handOvers = [{ from: 'pegs', to: 'x', kind: 'crew' as const, of: 'left', people: 6 }];
    expect(refuse({ handOvers })).toMatchObject(misfit('x'));
  });

  it('is refused when the order of work is faulty', () => {
    const links = [...siteWork.links, ...comesAfter('pegs', 'lift')];
    const refused = site().refusal('accept-plan', accept({ ...siteWork, links }, 2));
    expect(refused.code).toBe('loop-in-order');
  });

  it('may drop a task of which nothing was told, and no other', () => {
    const given = site();
    given.send('accept-plan', accept(without('unload'), 2));
    expect(given.state.tasks.unload).toBeUndefined();
    given.send('tell-started', { task: 'pegs', crew: 'left' }, { by: hill });
    const refused = given.refusal('accept-plan', accept(without('pegs'), 3));
    expect(refused).toMatchObject({ code: 'plan-does-not-fit', of: ['pegs'] });
  });

  it('leaves what was told as it is, and takes new tasks in', () => {
    const given = site();
    given.finish('pegs');
    given.send('tell-started', { task: 'panel-left', crew: 'left' }, { by: hill, at: 6 });
    const before = given.state.tasks;
    const more = { ...siteWork, tasks: [...siteWork.tasks, task({ id: 'lights', number: 10 })] };
    given.send('accept-plan', accept(more, 2));
    expect(given.state.tasks.pegs).toBe(before.pegs);
    expect(given.state.tasks['panel-left']).toEqual(before['panel-left']);
    expect(given.state.tasks.deck).toBe(before.deck);
    expect(given.task('lights').status).toBe('to-come');
  });

  it('asks the new plan’s crews of a joint task that is under way', () => {
    const given = site();
    given.send('tell-finished', { task: 'lift', crew: 'left' }, { by: hill });
    expect(given.task('lift').status).toBe('at-work');
    const alone = siteWork.tasks.map((each) =>
      each.id === 'lift' ? { ...each, needs: each.needs.slice(0, 1) } : each,
    );
    given.send('accept-plan', accept({ ...siteWork, tasks: alone }, 2));
    expect(given.task('lift').status).toBe('done');
  });
});

describe('a plan that took in what was told', () => {
  const change = (people: number, arrives: number): Work => ({
    ...siteWork,
    crews: siteWork.crews.map((crew) => (crew.id === 'left' ? { ...crew, people } : crew)),
    loads: siteWork.loads.map((load) => ({ ...load, arrives })),
  });

  it('does not count a hurt person or a late load twice', () => {
    const given = site();
    given.send('tell-hurt', { crew: 'left', what: 'hand', outOfWork: true }, { by: hill });
    given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'tyre' });
    given.send('accept-plan', accept(change(6, 22), 4));
    expect(given.state.crews.left).toMatchObject({ fit: 6, planned: { people: 7 } });
    expect(given.state.loads.truck).toMatchObject({ status: 'late', at: clock(22), why: 'tyre' });
  });

  it('puts another strength and another time in place of what was told before', () => {
    const given = site();
    given.send('tell-strength', { crew: 'left', fit: 5 }, { by: hill });
    given.send('tell-load-late', { load: 'truck', minutes: 12, why: 'tyre' });
    given.send('accept-plan', accept(change(9, 40), 4));
    expect(given.state.crews.left).toMatchObject({ fit: 9, toldAt: null });
    expect(given.state.loads.truck).toMatchObject({ status: 'expected', at: clock(40) });
    given.send('tell-hurt', { crew: 'left', what: 'foot', outOfWork: true }, { by: hill });
    expect(given.state.crews.left?.fit).toBe(8);
  });
});

describe('choosing another bridge', () => {
  const ground: CommandBody<'choose-bridge'>['ground'] = {
    format: 'spanwright-ground',
    version: 1,
    name: 'Larch Ford',
    zone: 'Europe/Berlin',
    place: null,
    gap: 31,
    near: { kind: 'natural', height: null, setback: 1 },
    far: { kind: 'natural', height: null, setback: 1 },
    roomBehind: null,
    water: { depth: null, rise: null },
    loadClass: 30,
  };
  const bridge: CommandBody<'choose-bridge'>['bridge'] = {
    kit: { name: 'heron', title: 'Heron', hash: '', notForUse: true },
    manner: 'launched',
    bays: 1,
    bayLength: 3,
    length: 3,
    nose: 0,
    noseLength: 0,
    bearing: { near: 1, far: 1 },
    loadClass: 30,
    gap: 2,
    landsAt: 3,
    roomNeeded: 5,
    masses: { bay: 1150, deck: 950, nose: 280 },
    stages: [],
    parts: [],
    unknowns: [],
  };

  it('replaces the order of work and asks for a new plan', () => {
    const given = site();
    given.send('choose-bridge', { ground, bridge, work: without('unload') });
    expect(given.state).toMatchObject({ bridge: { bays: 1 }, plan: null, planCount: 1 });
    expect(given.state.tasks.unload).toBeUndefined();
  });

  it('is refused once work was told', () => {
    const given = site();
    given.finish('pegs');
    const refused = given.refusal('choose-bridge', { ground, bridge, work: siteWork });
    expect(refused).toMatchObject({ code: 'work-has-begun', of: ['pegs'] });
  });
});

describe('what the leader sets', () => {
  it('is confidence and the time asked for', () => {
    const given = site();
    given.send('set-confidence', { confidence: 0.8 });
    given.send('set-asked-for', { askedFor: null });
    expect(given.state).toMatchObject({ confidence: 0.8, askedFor: null });
  });
});
