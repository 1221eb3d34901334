import fc from 'fast-check';
import { Value } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { tells } from '#domain/progress/command.ts';
import { fold } from '#domain/progress/evolve.ts';
import { BuildState, type TaskState } from '#domain/progress/state.ts';
import { refusalCodes } from '#domain/refusal.ts';
import { leader, siteWork } from './site.ts';
import { anySteps, meet, play, workStep } from './steps.ts';

const zonesOf = Object.fromEntries(siteWork.tasks.map(({ id, zones }) => [id, zones]));

/** Tasks at which somebody is told at work, straight from the shares. */
function atWork(state: BuildState): string[] {
  return Object.entries(state.tasks)
    .filter(([, { status, shares }]) =>
      [status, ...shares.map((share) => share.status)].includes('at-work'),
    )
    .map(([id]) => id);
}

describe('whatever is sent, in whatever order', () => {
  it('a refusal emits nothing, and says what to do', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { before, after, refused } of play(steps).met) {
          if (!refused) continue;
          expect(after).toBe(before);
          expect(refusalCodes).toContain(refused.code);
          expect(refused.sentence).toMatch(/^[A-Z0-9"].*[.!]$/);
        }
      }),
    );
  });

  it('every command that is accepted leaves one entry, and numbers have no gaps', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { given, met } = play(steps);
        const accepted = met.filter(({ refused }) => !refused);
        // Two entries opened the site and put the plan in force.
        expect(given.entries).toHaveLength(2 + accepted.length);
        expect(given.entries.map(({ number }) => number)).toEqual(
          given.entries.map((_, index) => index + 1),
        );
        expect(given.state.number).toBe(given.entries.length);
      }),
    );
  });

  it('no tell is refused but for role, identity, form or what may be withdrawn', () => {
    const rightful = ['role-cannot', 'not-your-crew', 'form-wrong', 'hold-needs-inspection'];
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { sent, refused } of play(steps).met) {
          if (!refused || !(sent.kind in tells) || sent.kind === 'withdraw') continue;
          expect(rightful).toContain(refused.code);
        }
      }),
    );
  });

  it('the state is what its schema says, and plain JSON', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { given } = play(steps);
        expect(Value.Check(BuildState, given.state)).toBe(true);
        expect(JSON.parse(JSON.stringify(given.state))).toEqual(given.state);
        expect(JSON.parse(JSON.stringify(given.entries))).toEqual(given.entries);
      }),
      { numRuns: 40 },
    );
  });

  it('folding in two halves is folding once, also through JSON', () => {
    fc.assert(
      fc.property(anySteps, fc.nat(), (steps, cut) => {
        const { given } = play(steps);
        const at = cut % (given.entries.length + 1);
        const half = fold(given.entries.slice(0, at));
        const whole = fold(given.entries.slice(at), JSON.parse(JSON.stringify(half)));
        expect(whole).toEqual(given.state);
      }),
    );
  });

  it('no keep-off task is granted while anybody else is told at work in its zones', () => {
    let granted = 0;
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { after, entry } of play(steps).met) {
          if (entry?.kind !== 'keep-off-started') continue;
          granted += 1;
          const inside = atWork(after).filter((id) =>
            zonesOf[id]?.some((zone) => zonesOf.move!.includes(zone)),
          );
          expect(inside).toEqual(['move']);
          expect(after.halt).toBeNull();
          expect(after.tasks.check?.hold).toBe('passed');
          for (const id of ['pegs', 'panel-left', 'panel-right', 'lift'])
            expect(after.tasks[id]?.status).toBe('done');
        }
      }),
      { numRuns: 200 },
    );
    expect(granted).toBeGreaterThan(20);
  });

  it('no keep-off task is granted without enough heads counted and both banks seen clear', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { before, entry } of play(steps).met) {
          if (entry?.kind !== 'keep-off-started') continue;
          const { off, clear } = before.clearances.move ?? { off: {}, clear: {} };
          const { left, right } = before.crews;
          // Four of the left crew move the bridge; everybody else is off.
          if (left!.fit > 4) expect(off.left?.off).toBeGreaterThanOrEqual(left!.fit - 4);
          if (right!.fit > 0) expect(off.right?.off).toBeGreaterThanOrEqual(right!.fit);
          expect(Object.keys(clear).toSorted()).toEqual(['far', 'near']);
        }
      }),
    );
  });

  it('a breach is kept in the record and in sight, also when the tell is withdrawn', () => {
    let breaches = 0;
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { given } = play(steps);
        for (const { number, breaches: broken = [] } of given.entries) {
          breaches += broken.length;
          const shown = given.state.events.filter(
            ({ entry, kind }) => entry === number && kind === 'breach',
          );
          expect(shown.map(({ breach }) => breach)).toEqual(broken);
        }
      }),
    );
    expect(breaches).toBeGreaterThan(50);
  });

  it('work told started after a halt, in a closed zone or before its turn is a breach', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { sent, before, entry } of play(steps).met) {
          if (!entry || sent.kind !== 'tell-started') continue;
          const { task } = sent.body;
          if (before.tasks[task]?.status === 'done') continue;
          const rules = (entry.breaches ?? []).map(({ rule }) => rule);
          if (before.halt && entry.happenedAt >= before.halt.since) expect(rules).toContain('halt');
          const moving = before.tasks.move!;
          const shares = zonesOf[task]!.some((zone) => zonesOf.move!.includes(zone));
          const during = atWork(before).includes('move') && entry.happenedAt >= moving.startedAt!;
          if (task !== 'move' && shares && during) expect(rules).toContain('keep-off');
          const turn = siteWork.links
            .filter(({ to }) => to === task)
            .every(({ from }) => before.tasks[from]?.status === 'done');
          expect(turn || rules.includes('order') || rules.includes('hold')).toBe(true);
        }
      }),
    );
  });

  it('a halt and a near miss stay in sight for ever', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { given } = play(steps);
        for (const kind of ['halt', 'near-miss'] as const) {
          const told = given.entries.filter(
            (entry) => entry.kind === (kind === 'halt' ? 'halt-called' : 'near-miss-told'),
          );
          const shown = given.state.events.filter((event) => event.kind === kind);
          expect(shown.map(({ entry }) => entry)).toEqual(told.map(({ number }) => number));
        }
      }),
    );
  });

  it('nobody is at work right after a halt is called', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { after, entry } of play(steps).met) {
          if (entry?.kind !== 'halt-called') continue;
          const shares = Object.values(after.tasks).flatMap((task) => task.shares);
          expect(shares.some(({ status }) => status === 'at-work')).toBe(false);
          expect(after.clearances).toEqual({});
        }
      }),
    );
  });

  it('withdrawing the last tell restores the task it was about', () => {
    fc.assert(
      fc.property(anySteps, workStep, (steps, last) => {
        const { given } = play(steps);
        const before = given.state;
        const [met] = meet(given, last, 60);
        if (!met?.entry) return;
        const { task } = met.entry.body as { task: string };
        given.send('withdraw', { entry: met.entry.number, why: '' }, { by: leader, at: 61 });
        expect(withoutTells(given.task(task))).toEqual(withoutTells(before.tasks[task]!));
      }),
    );
  });

  it('two tells about different tasks leave them the same in either order', () => {
    fc.assert(
      fc.property(anySteps, workStep, workStep, (steps, one, other) => {
        const once = play(steps).given;
        const twice = play(steps).given;
        const first = [...meet(once, one, 60), ...meet(once, other, 60)];
        const second = [...meet(twice, other, 60), ...meet(twice, one, 60)];
        const told = first.map(({ sent }) => (sent.body as { task: string }).task);
        if (told[0] === told[1]) return;
        expect(second.map(({ refused }) => refused?.code)).toEqual(
          first.toReversed().map(({ refused }) => refused?.code),
        );
        for (const task of told)
          expect(ofStatus(twice.task(task))).toEqual(ofStatus(once.task(task)));
      }),
    );
  });

  it('a task is done only while each of its crews has told so', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const { after } of play(steps).met) {
          const { status, shares } = after.tasks.lift!;
          const done = shares.filter((share) => share.status === 'done').map(({ crew }) => crew);
          expect(status === 'done').toBe(done.includes('left') && done.includes('right'));
        }
      }),
    );
  });
});

function withoutTells({ tells: _tells, ...rest }: TaskState): Omit<TaskState, 'tells'> {
  return rest;
}

function ofStatus({ status, startedAt, finishedAt, why, part, disputed, shares }: TaskState) {
  return { status, startedAt, finishedAt, why, part, disputed, shares };
}
