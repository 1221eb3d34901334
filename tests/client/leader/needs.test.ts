import { describe, expect, it } from 'vitest';
import { needsOf } from '#client/screens/leader/now/needs.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import { smallBuild, smallNow, standingSo } from '../support/smallBuild.ts';

const plan: Plan = {
  format: 'spanwright-plan',
  version: 1,
  tasks: smallBuild.work.tasks.map(({ id }, at) => ({
    task: id,
    crews: [{ crew: 'left', people: 6 }],
    start: at,
    finish: at + 1,
    release: 0,
    stretch: 1,
    reason: { kind: 'start' },
  })),
  handOvers: [],
  opening: 'move-5',
  minutesToOpen: 60,
  lowerBound: 60,
  shape: 'pert',
};
// Nothing is late before the first truck is due.
const planned: BuildState = { ...smallBuild, plan };
const quiet = standingSo('bay-9-right', { status: 'done' }, planned);
const before = new Date(smallNow - 10 * 60_000).toISOString();
const none = new Set<string>();
const sentences = (state: BuildState, seen = none): string[] =>
  needsOf(state, before, seen).map(({ sentence }) => sentence);

const event = (kind: 'breach' | 'hurt' | 'near-miss' | 'reopened', entry: number) => ({
  entry,
  kind,
  at: before,
  sentence: `${kind} ${entry}`,
});

describe('what needs the leader', () => {
  it('is nothing on a quiet build', () => {
    expect(sentences(quiet)).toEqual([]);
  });

  it('is the ground before there is work, the crews before there are any, the plan before there is one', () => {
    const bare = { ...emptyBuild, start: smallBuild.start };
    expect(needsOf(bare, before, none)).toMatchObject([{ can: 'ground' }]);
    const noCrews = { ...quiet, work: { ...quiet.work, crews: [] }, crews: {} };
    expect(needsOf(noCrews, before, none).at(-1)).toMatchObject({ can: 'crews' });
    expect(needsOf({ ...quiet, plan: null }, before, none)).toMatchObject([{ can: 'plan' }]);
  });

  it('is, once there is a plan, that chiefs get their links and what comes first', () => {
    const needs = needsOf(planned, before, none);
    expect(needs.map(({ can }) => can)).toEqual(['links', 'look']);
    expect(needs[1]).toMatchObject({ task: plan.tasks[0]!.task });
    expect(needs[1]!.sentence).toContain('comes first, planned for 11:30');
    expect(sentences(planned, new Set(['links']))).toHaveLength(1);
  });

  it('leads from a late truck to where its arrival is told', () => {
    const due = new Date(Date.parse(smallBuild.start) + 140 * 60_000).toISOString();
    expect(needsOf(quiet, due, none)[0]).toMatchObject({ can: 'load' });
  });

  it('puts broken rules before contradictions before people hurt before everything else', () => {
    const state = {
      ...standingSo('bay-9-left', { status: 'stopped', why: 'pin jammed' }, quiet),
      events: [event('hurt', 1), event('breach', 2), event('reopened', 3)],
    };
    const disputed = standingSo('bay-9-right', { status: 'stopped', disputed: true }, state);
    expect(needsOf(disputed, before, none).map(({ can, grave }) => [can, grave])).toEqual([
      ['seen', true],
      ['settle', true],
      ['seen', true],
      ['look', false],
    ]);
    expect(sentences(disputed)[0]).toBe('Breach: breach 2');
  });

  it('says a contradiction once, though it also holds the build up', () => {
    const state = standingSo('bay-9-left', { status: 'stopped', disputed: true }, quiet);
    expect(sentences(state)).toHaveLength(1);
  });

  it('forgets a report that was seen, but not another one of its kind', () => {
    const state = { ...quiet, events: [event('near-miss', 1), event('near-miss', 2)] };
    const [first] = needsOf(state, before, none);
    expect(sentences(state, new Set([first!.key]))).toEqual(['near-miss 1']);
  });

  it('names a crew that has fewer fit than a task still to come counts on', () => {
    const weak = { ...quiet.crews, left: { ...quiet.crews.left!, fit: 5 } };
    expect(sentences({ ...quiet, crews: weak })).toEqual([
      'Left girder has 5 fit; the plan counts on 6.',
    ]);
    const done = Object.fromEntries(
      Object.entries(quiet.tasks).map(([id, task]) => [id, { ...task, status: 'done' as const }]),
    );
    expect(sentences({ ...quiet, crews: weak, tasks: done })).toEqual([]);
  });

  it('leads to lending where a crew is too weak for work that it alone can do', () => {
    const weak = { ...quiet.crews, left: { ...quiet.crews.left!, fit: 1 } };
    const [need] = needsOf({ ...quiet, crews: weak }, before, none);
    expect(need).toMatchObject({ can: 'lend' });
    expect(need?.sentence).toMatch(
      /^Left girder has 1 fit, and Bay 9, left side \(57\) takes at least \d/,
    );
  });

  it('does not say that no plan can be made for work that goes on with fewer than it takes', () => {
    const weak = { ...quiet.crews, left: { ...quiet.crews.left!, fit: 1 } };
    const tasks = Object.fromEntries(
      Object.entries(quiet.tasks).map(([id, task]) => [
        id,
        { ...task, status: task.status === 'done' ? task.status : ('at-work' as const) },
      ]),
    );
    const need = needsOf({ ...quiet, crews: weak, tasks }, before, none).find(({ key }) =>
      key.startsWith('weak left'),
    );
    expect(need).toMatchObject({ can: 'plan' });
  });

  it('counts people lent to a crew where they work, from when they do', () => {
    const lent = [{ crew: 'left', people: 4, from: 0 }];
    const crews = quiet.work.crews.map((one) => (one.id === 'right' ? { ...one, lent } : one));
    const state = {
      ...quiet,
      work: { ...quiet.work, crews },
      crews: { ...quiet.crews, left: { ...quiet.crews.left!, fit: 3 } },
    };
    // The right girder has lent more than it can spare: three of its seven are left, for six.
    expect(sentences(state).filter((one) => one.startsWith('Left'))).toEqual([]);
    const over = { ...lent[0]!, to: 1 };
    const ended = crews.map((one) => (one.id === 'right' ? { ...one, lent: [over] } : one));
    const later = { ...state, work: { ...state.work, crews: ended } };
    expect(sentences(later).some((one) => one.startsWith('Left girder has 3 fit'))).toBe(true);
  });

  it('says which work was started on the strength of something undone', () => {
    const state = standingSo('bay-10-left', { flagged: true, flaggedFor: ['bay-9-left'] }, quiet);
    expect(sentences(state)[0]).toContain('on the strength of Bay 9, left side (57)');
  });
});
