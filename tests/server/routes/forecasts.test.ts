import { Value } from 'typebox/value';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { plainDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import type { RefusalReply } from '#shared/wire.ts';
import { ForecastHistory, FullForecast, MovesReply, PaceReply } from '#shared/wireForecast.ts';
import { playedBuild } from '#tests/support/playedBuild.ts';
import {
  command,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

const start = '2026-03-02T14:00:00.000Z';

/** The demo's build played for so many minutes from the afternoon on, and a server that has just come up with its record. */
async function playing(minutes = 200, ledger = memoryLedger()) {
  const server = await testServer({ ledger, runs: 200, moveWait: 0 });
  server.clock.advance((Date.parse(start) - server.clock.now().getTime()) / 60_000 + minutes);
  const ford = await playedBuild(server, start, minutes);
  return { server, ford, ledger };
}

function asker(server: TestServer, ford: TestBuild) {
  const get = async <Body>(path: string, who = 'leader'): Promise<Body> => {
    const answer = await server.ask<Body>(
      'GET',
      `/api/builds/${ford.build}${path}`,
      ford.secret(who),
    );
    expect(answer.status, answer.text.slice(0, 300)).toBe(200);
    return answer.json;
  };
  const tell = async (kind: Parameters<typeof command>[1], body: unknown, who = 'leader') => {
    const answer = await server.ask(
      'POST',
      `/api/builds/${ford.build}/commands`,
      ford.secret(who),
      command(server, kind, body),
    );
    expect(answer.status, answer.text).toBe(200);
  };
  /** The full forecast once it is of that record number or a later one, and its moves are looked at. */
  const full = async (who = 'leader') => {
    const number = (await server.ledger.head(ford.build))!.number;
    return vi.waitFor(
      async () => {
        const found = await get<FullForecast>('/forecast/full', who);
        expect(found.frame?.number ?? -1).toBeGreaterThanOrEqual(number);
        return found;
      },
      { timeout: 10_000, interval: 20 },
    );
  };
  const history = (who = 'leader') => get<ForecastHistory>('/forecast/history', who);
  const marked = (count: number) =>
    vi.waitFor(
      async () => {
        const found = await history();
        expect(found.moves.length).toBeGreaterThanOrEqual(count);
        return found;
      },
      { timeout: 10_000, interval: 20 },
    );
  return { get, tell, full, history, marked };
}

describe('the full forecast', () => {
  let server: TestServer;
  let ford: TestBuild;
  let ask: ReturnType<typeof asker>;
  let first: FullForecast;
  beforeAll(async () => {
    ({ server, ford } = await playing());
    ask = asker(server, ford);
    first = await ask.full();
  });

  it('is as its schema has it, with what the headline rests on', () => {
    expect(Value.Errors(FullForecast, first)).toEqual([]);
    const { frame, milestones, tasksOnChain, crewsOnChain } = first;
    expect(frame?.forecast?.openings).toHaveLength(20);
    expect(milestones.some(({ done }) => done)).toBe(true);
    const names = milestones.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(tasksOnChain[0]!.share).toBeGreaterThan(0.3);
    expect(crewsOnChain.length).toBeGreaterThan(1);
  });

  it('says which doubts and conditions are on, with their figures and where those come from', () => {
    expect(first.chosen).toBe(false);
    expect(first.sources.filter(({ on }) => on).map(({ kind }) => kind)).toEqual([
      'own',
      'day',
      'crews',
      'event',
      'event',
      'event',
    ]);
    expect(first.conditions.filter(({ on }) => on).map(({ name }) => name)).toEqual(['light']);
    expect(first.conditionsSentence).toBe(
      'No condition makes the minutes longer. In the dark everything takes 1.5 times as long again.',
    );
  });

  it('has the light of the site by its trade names, today and tomorrow, and the moon', () => {
    const { days, dark, sentence, moonSentence } = first.light!;
    expect(days).toHaveLength(2);
    const today = days[0]!;
    expect(today.sunrise! < today.sunset! && today.sunset! < today.civilDusk!).toBe(true);
    // The first night of the build begins at today's EECT.
    const dusk = (Date.parse(today.civilDusk!) - Date.parse(start)) / 60_000;
    expect(dark.some(({ from }) => Math.abs(from - dusk) < 1)).toBe(true);
    expect(sentence).toMatch(/EECT/);
    expect(moonSentence).toMatch(/% lit/);
  });

  it('spreads less once the leader switches everything off but the tasks’ own minutes', async () => {
    const doubt = plainDoubt(first.doubt);
    await ask.tell('set-doubt', { doubt });
    const plain = await ask.full();
    expect(plain).toMatchObject({ chosen: true, doubt });
    expect(plain.frame!.forecast!.sd).toBeLessThan(0.6 * first.frame!.forecast!.sd);
    // Night falls before the end: without the dark it opens earlier.
    expect(plain.frame!.forecast!.p50).toBeLessThan(first.frame!.forecast!.p50);
    const { moves } = await ask.marked(1);
    expect(moves.at(-1)!.causes[0]).toMatchObject({ kind: 'doubt' });
    expect(moves.at(-1)!.minutes).toBeLessThan(-1);
  });

  it('knows no light where nobody gave the place, and no forecast without a plan', async () => {
    const plain = await openTestBuild(server);
    const path = `/api/builds/${plain.build}/forecast/full`;
    const { json } = await server.ask<FullForecast>('GET', path, plain.secret('commander'));
    expect(json).toMatchObject({ light: null, milestones: [], moved: { last: null, start: null } });
  });
});

describe('how the forecast moved', () => {
  it('is marked with what moved it, and the same after the server came up again', async () => {
    const { server, ford, ledger } = await playing(100);
    const ask = asker(server, ford);
    const { frame } = await ask.full();
    const load = await lateTruck(server, ford);
    server.clock.advance(1);
    await ask.tell('tell-load-late', { load, minutes: 90, why: 'road closed' }, 'log');
    await ask.full();
    const history = await ask.marked(1);
    expect(Value.Errors(ForecastHistory, history)).toEqual([]);
    const move = history.moves.at(-1)!;
    expect(move.since.number).toBe(frame!.number);
    expect(move.number).toBe(frame!.number + 1);
    expect(move.causes[0]!.kind).toBe('stores');
    expect(move.causes[0]!.sentence).toMatch(/^(\d+ h )?\d+ min later: .* 90 min late\.$/);
    const sum = move.causes.reduce((all, { minutes }) => all + minutes, 0);
    // Causes below half a minute are left out, and there are six kinds.
    expect(Math.abs(sum - move.minutes)).toBeLessThan(3);
    const at = history.points.map((point) => point.at);
    expect(at).toEqual(at.toSorted());
    const [before, after] = [move.since.at, move.at].map(
      (time) => history.points.find((point) => point.at === time)!.promised,
    );
    // The mark explains the curve: paired on 200 runs each, so to a few minutes.
    expect(Math.abs(after! - before! - move.minutes)).toBeLessThan(5);

    // The same host's link is made again, and is there already.
    const same = { ...ledger, addLink: async () => {} };
    const again = await testServer({ ledger: same, runs: 200, moveWait: 0 });
    again.clock.advance((server.clock.now().getTime() - again.clock.now().getTime()) / 60_000);
    const later = asker(again, ford);
    const read = await later.history();
    expect(read.moves).toEqual(history.moves);
    expect(read.points.slice(0, history.points.length)).toEqual(history.points);
    // What moved it since the start is found from the record, though nobody alive saw the first forecast.
    again.clock.advance(1);
    const whole = await later.full();
    await vi.waitFor(async () => {
      const { moved } = await later.get<FullForecast>('/forecast/full');
      expect(moved.start?.since.at).toBe(history.points[0]!.at);
    });
    expect(whole.moved.start!.causes.map(({ kind }) => kind)).toContain('stores');
  });

  it('tells nobody but the leader whose pace it was', async () => {
    const { server, ford } = await playing();
    const ask = asker(server, ford);
    await ask.full();
    // Three hours in which nothing was finished teach that everybody is slow.
    server.clock.advance(60);
    await ask.tell('tell-near-miss', { what: 'a plank slipped' });
    await ask.tell('tell-wind', { speed: 3 });
    await ask.tell('set-asked-for', { askedFor: '2026-03-02T22:00:00.000Z' });
    await ask.full();
    const { moves } = await ask.marked(1);
    const own = moves.flatMap(({ causes }) => causes).filter(({ kind }) => kind === 'pace');
    expect(own.length).toBeGreaterThan(0);
    expect(own[0]!.sentence).toMatch(/min for each/);
    for (const who of ['commander', 'log', 'inspector']) {
      const { moves: seen } = await ask.history(who);
      const causes = seen.flatMap((move) => move.causes).filter(({ kind }) => kind === 'pace');
      expect(causes.map(({ minutes }) => minutes)).toEqual(own.map(({ minutes }) => minutes));
      for (const { sentence } of causes) {
        expect(sentence).toMatch(/^(\d+ h )?\d+ min (later|earlier): the pace is known better\.$/);
      }
    }
  });
});

/** A truck that has not come and that some task to come waits for. */
async function lateTruck(server: TestServer, ford: TestBuild): Promise<string> {
  const { json } = await server.ask<{ state: { loads: Record<string, { status: string }> } }>(
    'GET',
    `/api/builds/${ford.build}`,
    ford.secret('leader'),
  );
  const waiting = Object.entries(json.state.loads).find(([, { status }]) => status === 'expected');
  if (!waiting) throw new Error('every truck is in');
  return waiting[0];
}

describe('what moves it', () => {
  it('is ranked, in sentences, with what cannot help', async () => {
    const { server, ford } = await playing();
    const found = await server.ask<MovesReply>(
      'POST',
      `/api/builds/${ford.build}/forecast/moves`,
      ford.secret('leader'),
      { sizes: { people: 3 } },
    );
    expect(found.status, found.text).toBe(200);
    expect(Value.Errors(MovesReply, found.json)).toEqual([]);
    const { ranked, cannotHelp } = found.json;
    const gains = ranked.map(({ gain80 }) => Math.abs(gain80));
    expect(gains).toEqual(gains.toSorted((one, other) => other - one));
    const all = [...ranked, ...cannotHelp];
    expect(all.some(({ words }) => words.startsWith('Three more people in'))).toBe(true);
    expect(ranked[0]!.sentence).toContain('at four in five');
  });

  it('stops when the leader says so, and not by another build’s leader', async () => {
    const planner = plannerHere();
    let begun = () => {};
    const started = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const server = await testServer({
      planner: {
        ...planner,
        movesIt: (_job, { signal } = {}) =>
          new Promise((_resolve, reject) => {
            signal?.addEventListener('abort', () => reject(signal.reason));
            begun();
          }),
      },
    });
    server.clock.advance(3 * 24 * 60);
    const ford = await playedBuild(server, start, 60);
    const weir = await openTestBuild(server);
    const job = server.ids.long();
    const path = (build: TestBuild) => `/api/builds/${build.build}/forecast/moves`;
    const asked = server.ask<RefusalReply>('POST', path(ford), ford.secret('leader'), { job });
    await started;
    const twice = await server.ask<RefusalReply>('POST', path(ford), ford.secret('leader'), {
      job,
    });
    expect(twice.json.code).toBe('id-used-otherwise');
    const stop = (build: TestBuild) =>
      server.ask<RefusalReply>('DELETE', `${path(build)}/${job}`, build.secret('leader'));
    expect((await stop(weir)).json.code).toBe('job-unknown');
    expect((await stop(ford)).status).toBe(204);
    expect((await asked).json.code).toBe('job-cancelled');
    expect((await stop(ford)).json.code).toBe('job-unknown');
  });

  it('is nothing before there is a plan', async () => {
    const server = await testServer();
    const ford = await openTestBuild(server);
    const found = await server.ask<RefusalReply>(
      'POST',
      `/api/builds/${ford.build}/forecast/moves`,
      ford.secret('leader'),
      {},
    );
    expect([found.status, found.json.code]).toEqual([409, 'nothing-to-forecast']);
  });
});

describe('the pace of the crews', () => {
  it('is told to the leader in plain words, from timed tasks', async () => {
    const { server, ford } = await playing();
    const pace = await asker(server, ford).get<PaceReply>('/pace');
    expect(Value.Errors(PaceReply, pace)).toEqual([]);
    const left = pace.crews.find(({ crew }) => crew === 'left')!;
    expect(left.tasks).toBeGreaterThan(5);
    expect(left.from < left.factor && left.factor < left.to).toBe(true);
    // The played crews took a little over and under their minutes.
    expect(Math.abs(Math.log(left.factor))).toBeLessThan(0.15);
    expect(left.words).toMatch(/^as planned$|^\d+ min for each (5|10) planned$/);
  });

  it('is nobody’s before there is a plan', async () => {
    const server = await testServer();
    const ford = await openTestBuild(server);
    expect(await asker(server, ford).get('/pace')).toEqual({ crews: [], inOneGo: 0 });
  });
});
