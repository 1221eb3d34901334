import { describe, expect, it } from 'vitest';
import type { Fault } from '#domain/fault.ts';
import type { Kit } from '#domain/kit/kit.ts';
import type { After, TaskTemplate } from '#domain/kit/order.ts';
import { readKit } from '#domain/kit/readKit.ts';
import footbridge from '#tests/corpus/kits/footbridge.json' with { type: 'json' };
import { heron } from './heronKit.ts';

function faultsOf(json: unknown, file?: string): readonly Fault[] {
  const read = readKit(json, file);
  return read.ok ? [] : read.reason;
}

function pathsOf(json: unknown): (string | undefined)[] {
  return faultsOf(json).map(({ path }) => path);
}

/** Heron with one task of its order changed, and where that task stands. */
function withTask(id: string, change: (task: TaskTemplate) => TaskTemplate): [Kit, string] {
  const row = heron.order.findIndex((task) => task.id === id);
  const order = heron.order.map((task, at) => (at === row ? change(task) : task));
  return [{ ...heron, order }, `/order/${row}`];
}

function expectAt(id: string, change: (task: TaskTemplate) => TaskTemplate, field: string): void {
  const [kit, path] = withTask(id, change);
  expect(pathsOf(kit)).toContain(path + field);
}

const comingAfter = (...references: After[]) => ({ after: references });

describe('reading a kit', () => {
  it('takes the demo kit and the floating one', () => {
    expect(faultsOf(heron)).toEqual([]);
    expect(faultsOf(footbridge)).toEqual([]);
  });

  it('names all faults of form at once, each with the file', () => {
    const { zones: _, ...rest } = heron;
    const bay = { ...heron.bay, length: -3, width: 4 };
    const json = { ...rest, version: 2, bay, colour: 'green', notForUse: 'yes' };
    const faults = faultsOf(json, 'heron.json');
    expect(new Set(faults.map(({ file }) => file))).toEqual(new Set(['heron.json']));
    expect(faults.map(({ path }) => path).sort()).toEqual([
      '/bay/length',
      '/bay/width',
      '/colour',
      '/notForUse',
      '/version',
      '/zones',
    ]);
  });

  it('refuses what is no object', () => {
    expect(faultsOf(null)).toHaveLength(1);
    expect(faultsOf('heron')).toHaveLength(1);
  });

  it('refuses a caution that no card can show in a line or two', () => {
    expectAt('bay', (task) => ({ ...task, cautions: ['x'.repeat(71)] }), '/cautions/0');
  });
});

describe('what the fields of a kit say to each other', () => {
  it('wants a load class that never rises with length', () => {
    const loadClasses = [
      { upTo: 20, loadClass: 30 },
      { upTo: 20, loadClass: 40 },
    ];
    expect(pathsOf({ ...heron, loadClasses })).toEqual([
      '/loadClasses/1/upTo',
      '/loadClasses/1/loadClass',
    ]);
  });

  it('wants the launch masses to be the sums of the parts', () => {
    const kit = {
      ...heron,
      bay: { ...heron.bay, bare: 1200, deck: 900 },
      nose: { length: 3, most: 8, mass: 300 },
    };
    expect(pathsOf(kit)).toEqual(['/bay/bare', '/bay/deck', '/nose/mass']);
  });

  it('wants doubled ids mended in every list', () => {
    const twice = <Item>(items: readonly Item[]) => [...items, items[0]];
    const kit = {
      ...heron,
      zones: twice(heron.zones),
      crews: twice(heron.crews),
      loads: twice(heron.loads),
      order: twice(heron.order),
    };
    expect(pathsOf(kit)).toEqual(
      expect.arrayContaining([
        `/zones/${heron.zones.length}/id`,
        `/crews/${heron.crews.length}/id`,
        `/loads/${heron.loads.length}/id`,
        `/order/${heron.order.length}/id`,
      ]),
    );
  });

  it('wants rules for its own manner and none for the other', () => {
    expect(pathsOf({ ...heron, manner: 'floated' })).toEqual(['/boom', '/launch', '/nose']);
    expect(pathsOf({ ...footbridge, manner: 'launched' })).toEqual(['/launch', '/boom']);
  });

  it('wants a move at least as long as one lot of bays', () => {
    const launch = { ...heron.launch, longestMove: 5 };
    expect(pathsOf({ ...heron, launch })).toEqual(['/launch/longestMove']);
  });

  it('wants the parts of a group counted alike, and loads of groups that exist', () => {
    const parts = heron.parts.map((part) =>
      part.id === 'ramp' ? { ...part, group: 'site', per: 'bay' } : part,
    );
    const [first, ...others] = heron.loads;
    const loads = [
      {
        ...first,
        groups: ['site', 'sails'],
        bays: { group: 'nose', from: 4, to: 2 },
        last: ['oars'],
      },
      ...others,
    ];
    const paths = pathsOf({ ...heron, parts, loads });
    expect(paths).toEqual(
      expect.arrayContaining([
        '/loads/0/groups/1',
        '/loads/0/last/0',
        '/loads/0/bays/group',
        '/loads/0/bays/to',
      ]),
    );
    expect(paths.some((path) => /^\/parts\/\d+\/per$/.test(path ?? ''))).toBe(true);
  });

  it('wants estimates and people in rising order', () => {
    const minutes = { quick: 5, likely: 4, slow: 9 };
    expectAt('bay', (task) => ({ ...task, minutes }), '/minutes');
    const needs = [{ anyOf: ['left'], people: { least: 3, usual: 6, most: 5 } }];
    expectAt('bay', (task) => ({ ...task, needs }), '/needs/0/people');
  });

  it('wants references to tasks, loads and parts that exist', () => {
    expectAt('bay', (task) => ({ ...task, ...comingAfter({ task: 'keel' }) }), '/after/0/task');
    const load = { task: 'count', load: 'cargo' };
    expectAt('bay', (task) => ({ ...task, ...comingAfter(load) }), '/after/0/load');
    const used = { task: 'count', load: 'used' };
    expectAt('orders', (task) => ({ ...task, ...comingAfter(used) }), '/after/0/load');
    expectAt('bay', (task) => ({ ...task, uses: ['bay', 'sails'] }), '/uses/1');
    expectAt('orders', (task) => ({ ...task, before: [{ task: 'keel' }] }), '/before/0/task');
  });

  it('wants a repeat whose fields go together', () => {
    const repeat = { by: 'stage', bays: 'decked-early', size: 2, rearFirst: true } as const;
    for (const field of ['bays', 'size', 'rearFirst']) {
      expectAt('move', (task) => ({ ...task, repeat }), `/repeat/${field}`);
    }
    expectAt('kerb', (task) => ({ ...task, repeat: { by: 'lot' } }), '/repeat/size');
    expectAt('pins', (task) => ({ ...task, repeat: { by: 'side', sides: true } }), '/repeat/sides');
    expectAt('signs', (task) => ({ ...task, bank: 'near' }), '/bank');
  });

  it('wants exactly one opening, once, by a hold', () => {
    const [none] = withTask('open', ({ opens: _, ...task }) => task);
    expect(pathsOf(none)).toContain('/order');
    const [two] = withTask('orders', (task) => ({ ...task, opens: true }));
    expect(pathsOf(two)).toContain('/order');
    expectAt('open', ({ hold: _, ...task }) => task, '/opens');
    expectAt('open', (task) => ({ ...task, repeat: { by: 'bank' } }), '/repeat');
  });

  it('wants a hold before every move, and something after every hold', () => {
    expectAt(
      'move',
      (task) => ({ ...task, ...comingAfter({ task: 'secure', stage: 'previous' }) }),
      '/after',
    );
    const [unguarded, path] = withTask('rollers-hold', (task) => task);
    const order = unguarded.order.map((task) => ({
      ...task,
      after: task.after.filter((one) => one.task !== 'rollers-hold'),
    }));
    expect(pathsOf({ ...unguarded, order })).toContain(`${path}/hold`);
  });

  it('wants cautions on every keep-off task', () => {
    expectAt('move', (task) => ({ ...task, cautions: [] }), '/cautions');
  });

  it('wants the measures of a hold to be told apart and their limits in order', () => {
    const measure = { key: 'level', name: 'Level', unit: 'mm', least: 6, most: 5 } as const;
    const change = (task: TaskTemplate) => ({
      ...task,
      hold: { measures: [measure, measure], lapsesOn: [], redo: [] },
    });
    expectAt('seated', change, '/hold/measures/1/key');
    expectAt('seated', change, '/hold/measures/0/least');
  });

  it.each([
    ['a range outside the limit', { unit: 'm/s', most: 'wind', soft: { most: 13 } }, '/soft/most'],
    ['a range below the limit', { unit: 'm', least: 'margin', soft: { least: 1 } }, '/soft/least'],
    ['a range without ends', { unit: 'mm', most: 5, soft: {} }, '/soft'],
    ['a range that cannot be met', { unit: 'mm', soft: { least: 3, most: 2 } }, '/soft/least'],
    ['a range for a thing that is seen', { unit: 'yes', soft: { most: 2 } }, '/soft'],
    ['a limit for a thing that is seen', { unit: 'yes', most: 1 }, '/most'],
  ] as const)('finds %s at a hold', (_, measure, path) => {
    const change = (task: TaskTemplate) => ({
      ...task,
      hold: {
        measures: [{ key: 'one', name: 'One', ...measure }],
        lapsesOn: [],
        redo: [],
      },
    });
    expectAt('seated', change, `/hold/measures/0${path}`);
  });

  it('finds the wind limit of a kit that has none', () => {
    const { wind: _, ...limits } = heron.limits ?? {};
    const row = heron.order.findIndex(({ id }) => id === 'ready');
    const at = heron.order[row]?.hold?.measures.findIndex(({ key }) => key === 'wind');
    expect(pathsOf({ ...heron, limits })).toContain(`/order/${row}/hold/measures/${at}/most`);
  });
});

describe('the order of work written out for every length', () => {
  it('finds crews and zones that are not there, also behind placeholders', () => {
    const needs = [{ anyOf: ['{side}-crew'], people: { least: 1, usual: 1, most: 1 } }];
    expectAt('bay', (task) => ({ ...task, needs }), '/needs/0/anyOf');
    expectAt('ramp-near', (task) => ({ ...task, zones: ['{bank}-road'] }), '/zones');
  });

  it('finds more usual people than a zone has room for', () => {
    const zones = heron.zones.map((zone) => (zone.id === 'ahead' ? { ...zone, room: 8 } : zone));
    const row = heron.order.findIndex(({ id }) => id === 'move');
    expect(pathsOf({ ...heron, zones })).toContain(`/order/${row}/zones`);
  });

  it('finds placeholders that a task has nothing for', () => {
    expectAt('orders', (task) => ({ ...task, name: 'Orders for bay {bay}' }), '/name');
    expectAt('ready', (task) => ({ ...task, makes: 'ready-{section}' }), '/makes');
  });

  it('finds two tasks that would get one id', () => {
    expectAt('bay', (task) => ({ ...task, makes: 'bay-{bay}' }), '/makes');
  });

  it('finds an effect that is about something the task is not', () => {
    expectAt('orders', (task) => ({ ...task, effect: 'brace' }), '/effect');
    expectAt('bay', (task) => ({ ...task, effect: 'ramp' }), '/effect');
  });

  it('finds parts of some bays that no load carries', () => {
    const loads = heron.loads.filter(({ id }) => id !== 'girder');
    const row = heron.order.findIndex(({ id }) => id === 'bay');
    expect(pathsOf({ ...heron, loads })).toContain(`/order/${row}/uses`);
  });

  it('finds a circle and says who is in it', () => {
    const [kit] = withTask('brace', (task) => ({
      ...task,
      after: [...task.after, { task: 'move', stage: 'same' }],
    }));
    const [fault] = faultsOf(kit);
    expect(fault?.path).toBe('/order');
    expect(fault?.found).toMatch(/brace-\d+/);
    expect(fault?.found).toMatch(/move-\d+/);
  });

  it('finds tasks and references that come to nothing at any length', () => {
    expectAt(
      'orders',
      (task) => ({
        ...task,
        repeat: { by: 'bay', bays: 'decked-early' },
        makes: 'orders-{bay}',
        zones: ['assembly'],
        after: [{ task: 'roll-call', side: 'left' }],
      }),
      '/after/0',
    );
    const rules = { ...heron.launch, deckEarly: 0 };
    const row = heron.order.findIndex(({ id }) => id === 'deck-early');
    expect(pathsOf({ ...heron, launch: rules })).toContain(`/order/${row}`);
  });

  it('finds a kit that no length can be built of', () => {
    const launch = { ...heron.launch, margin: 40 };
    expect(pathsOf({ ...heron, launch })).toEqual(['/bay']);
  });
});
