import { describe, expect, it } from 'vitest';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { LiveBuild, OnChange } from '#server/live/liveBuild.ts';
import { Proposals } from '#server/live/proposals.ts';
import { Replanner } from '#server/live/replanner.ts';
import type { Searcher, SearchJob } from '#server/workers/searcher.ts';
import { testClock, testIds } from '#tests/support/server.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';
import { smallWork } from '#tests/support/smallWork.ts';

const work = smallWork(
  [
    { id: 'pegs', minutes: 30, crews: ['left', 'right'] },
    { id: 'panel', minutes: 40, crews: ['left', 'right'] },
    { id: 'move', minutes: 5, crews: ['left'], after: ['pegs', 'panel'], opens: true },
  ],
  {
    crews: [
      { id: 'left', people: 1 },
      { id: 'right', people: 1 },
    ],
  },
);

function planOf(of: Work): Plan {
  const plan = makePlan(of, { shape: 'pert', crews: true });
  if (!plan.ok) throw new Error(plan.reason.sentence);
  return plan.value;
}

/** All for the left crew, one after the other: 75 minutes, where two crews take 45. */
const slow = planOf({
  ...work,
  tasks: work.tasks.map((task) => ({
    ...task,
    needs: task.needs.map((need) => ({ ...need, anyOf: ['left'] })),
  })),
});
const quick = planOf(work);

const start = '2026-03-01T11:00:00.000Z';

/** A replanner on a build whose state the test sets, with a searcher that finds what the test says. */
function bench(accepted: Plan = slow) {
  let state: BuildState = { ...emptyBuild, number: 4, start, work, plan: accepted };
  let tell: OnChange = () => {};
  let leader = true;
  const sent: unknown[] = [];
  const asked: SearchJob[] = [];
  const failures: unknown[] = [];
  const live = {
    build: 'ford',
    get state() {
      return state;
    },
    onChange: (listener: OnChange) => {
      tell = listener;
    },
    feeds: {
      has: () => leader,
      sendTo: (role: string, text: string) =>
        sent.push([role, JSON.parse(text.split('data: ')[1] ?? '')]),
    },
  } as unknown as LiveBuild;
  const searcher: Searcher = {
    search: async (job) => {
      asked.push(job);
      return makePlan(job.work, { shape: job.shape, crews: true, past: job.past });
    },
    close: async () => {},
  };
  const clock = testClock(start);
  const proposals = new Proposals();
  const replanner = new Replanner(
    live,
    { searcher, planner: plannerHere(), proposals, clock, ids: testIds() },
    { runs: 20, seconds: 5, every: 60_000, onFailure: (error) => failures.push(error) },
  );
  return {
    replanner,
    proposals,
    clock,
    sent,
    asked,
    failures,
    leave: () => {
      leader = false;
    },
    change: (more: Partial<BuildState>) => {
      const before = state;
      state = { ...state, ...more };
      tell(before, state);
    },
    look: async () => {
      replanner.look();
      // Search, plan and forecasts answer in the turns that follow.
      for (let turn = 0; turn < 30; turn += 1) await Promise.resolve();
    },
  };
}

describe('a fresh plan worked out in the background', () => {
  it('is offered to leaders with what it gains, and can be accepted', async () => {
    const { replanner, look, sent, proposals, failures } = bench();
    await look();
    expect(failures).toEqual([]);
    const { offer } = replanner;
    expect(offer?.gain).toBe('opens 30 min earlier; changes 1 order for 2 crews');
    expect(sent).toEqual([['leader', offer]]);
    expect(proposals.find('ford', offer?.proposal ?? '')).toMatchObject({ basis: 4, plan: quick });
  });

  it('is not offered when it gains less than its changes cost', async () => {
    const { replanner, look, sent, asked } = bench(quick);
    await look();
    expect(asked).toHaveLength(1);
    expect([replanner.offer, sent]).toEqual([null, []]);
  });

  it('is offered for a truck told late, by what the plan in force then loses', async () => {
    // One crew. The panels' truck comes first and the pegs' after 20 minutes: panels, then pegs.
    const stored = smallWork(
      [
        { id: 'panels', minutes: 20, crews: ['left'], loads: ['panels'] },
        { id: 'pegs', minutes: 30, crews: ['left'], loads: ['pegs'] },
        { id: 'open', minutes: 5, crews: ['left'], after: ['panels', 'pegs'], opens: true },
      ],
      {
        crews: [{ id: 'left', people: 1 }],
        loads: ['panels', 'pegs'].map((id, at) => ({ id, name: id, arrives: 20 * at })),
      },
    );
    const { replanner, look, change, clock } = bench(planOf(stored));
    change({ work: stored });
    await look();
    expect(replanner.offer).toBeNull();
    const at = '2026-03-01T11:40:00.000Z';
    change({ loads: { panels: { status: 'late', at } } as unknown as BuildState['loads'] });
    clock.advance(1.5);
    await look();
    // By hand, 40 minutes late: 40 + 20 + 30 + 5 as planned; with the pegs first 20 + 30 + 20 + 5.
    expect(replanner.offer?.gain).toBe('opens 20 min earlier; changes 1 order for 1 crew');
  });

  it('goes when the work changes, and nobody is left with a plan that cannot be accepted', async () => {
    const { replanner, look, sent, change } = bench();
    await look();
    change({ workNumber: 9, number: 9 });
    expect(replanner.offer).toBeNull();
    expect(sent.at(-1)).toEqual(['leader', null]);
  });

  it('is not sought without a leader at the page, in a halt, or before there is a plan', async () => {
    const unwatched = bench();
    unwatched.leave();
    await unwatched.look();
    const halted = bench();
    halted.change({ halt: { at: start } as unknown as BuildState['halt'] });
    await halted.look();
    const unplanned = bench();
    unplanned.change({ plan: null });
    await unplanned.look();
    expect([unwatched.asked, halted.asked, unplanned.asked]).toEqual([[], [], []]);
  });

  it('is sought again only after a while, sooner when something was told', async () => {
    const { look, asked, clock, change } = bench(quick);
    await look();
    await look();
    expect(asked).toHaveLength(1);
    clock.advance(1.5);
    await look();
    expect(asked).toHaveLength(1);
    change({ tasks: {} });
    await look();
    expect(asked).toHaveLength(2);
    clock.advance(6);
    await look();
    expect(asked).toHaveLength(3);
  });

  it('stays away when it was declined, until there is another plan in force', async () => {
    const { replanner, look, clock, change, sent } = bench();
    await look();
    replanner.decline(replanner.offer?.proposal ?? '');
    expect(sent.at(-1)).toEqual(['leader', null]);
    clock.advance(10);
    await look();
    expect(replanner.offer).toBeNull();
    change({ plan: { ...slow }, planCount: 2 });
    clock.advance(10);
    await look();
    expect(replanner.offer).not.toBeNull();
  });

  it('stands for a while though ticks come in, and is declined by whichever of its plans the page shows', async () => {
    const { replanner, look, asked, clock, change } = bench();
    await look();
    const first = replanner.offer?.proposal ?? '';
    clock.advance(2);
    change({ tasks: {} });
    await look();
    expect([asked.length, replanner.offer?.proposal]).toEqual([1, first]);
    clock.advance(4);
    await look();
    expect(asked).toHaveLength(2);
    expect(replanner.offer?.proposal).not.toBe(first);
    replanner.decline(first);
    expect(replanner.offer).toBeNull();
  });

  it('gives way to whoever asks for a plan', async () => {
    const { replanner, look, sent } = bench();
    replanner.look();
    replanner.pause();
    await look();
    expect([replanner.offer, sent]).toEqual([null, []]);
  });
});
