import { beforeEach, describe, expect, it } from 'vitest';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { formReader } from '#server/form.ts';
import type { Planner } from '#server/workers/planner.ts';
import type { Searcher, SearchJob } from '#server/workers/searcher.ts';
import {
  ForecastFrame,
  Proposal,
  type Receipt,
  type RefusalReply,
  type Snapshot,
} from '#shared/wire.ts';
import type { ToldForecasts } from '#shared/wireBuilds.ts';
import {
  command,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';
import { plannerHere } from '#tests/support/serverPlanner.ts';

let server: TestServer;
let ford: TestBuild;
beforeEach(async () => {
  server = await testServer();
  ford = await openTestBuild(server);
});

const base = () => `/api/builds/${ford.build}`;
const propose = (changes: unknown[] = [], more: object = {}) =>
  server.ask<Proposal>('POST', `${base()}/proposals`, ford.secret('leader'), { changes, ...more });
const accept = (proposal: string) =>
  server.ask<Receipt>(
    'POST',
    `${base()}/commands`,
    ford.secret('leader'),
    command(server, 'accept-plan', { proposal }),
  );
const stateNow = async () =>
  (await server.ask<Snapshot>('GET', base(), ford.secret('leader'))).json.state;

/** The next forecast made on entry `number`. */
async function forecastOn(number: number): Promise<ForecastFrame> {
  for (;;) {
    const { json } = await server.ask<ForecastFrame | null>(
      'GET',
      `${base()}/forecast`,
      ford.secret('commander'),
    );
    if (json && json.number >= number) return json;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

describe('a plan on trial', () => {
  it('comes with its forecast and is recorded nowhere', async () => {
    const answer = await propose();
    expect(answer.status).toBe(201);
    expect(formReader(Proposal)(answer.json).ok).toBe(true);
    expect(answer.json).toMatchObject({ basis: 1, before: null });
    expect(answer.json.gain).toMatch(/^first plan/);
    expect((await stateNow()).plan).toBeNull();
  });

  it('goes into the record whole once it is accepted', async () => {
    const { json: proposal } = await propose();
    expect((await accept(proposal.proposal)).json).toMatchObject({ outcome: 'recorded', entry: 2 });
    const state = await stateNow();
    expect(state.plan).toEqual(proposal.plan);
    expect(state.planCount).toBe(1);
  });

  it('carries the changes it was made for into the order of work', async () => {
    const crew = { id: 'left', name: 'Left girder', people: 9, skills: [], attached: false };
    const { json: proposal } = await propose([{ kind: 'crew', crew }]);
    await accept(proposal.proposal);
    expect((await stateNow()).work.crews.find(({ id }) => id === 'left')?.people).toBe(9);
  });

  it('is made for rests, people lent and later strength, and accepted puts them in force', async () => {
    const told = command(server, 'tell-strength', { crew: 'left', fit: 6 });
    await server.ask('POST', `${base()}/commands`, ford.secret('left'), told);
    const { start } = await stateNow();
    const now = (server.clock.now().getTime() - Date.parse(start)) / 60_000;
    const rests = [{ from: 0, to: now + 30 }];
    const strength = [{ from: now + 600, people: 7 }];
    const lent = [{ crew: 'left', people: 2, from: now + 40, to: now + 90 }];
    const { json: proposal } = await propose([
      { kind: 'crew-hours', crew: 'left', rests, strength },
      { kind: 'crew-hours', crew: 'right', lent },
    ]);
    // Setting out the pegs is the left crew's: it waits until they have eaten.
    const pegs = proposal.plan.tasks.find(({ task }) => task === 'pegs');
    expect(pegs?.start).toBeGreaterThanOrEqual(now + 30 - 1 / 60);
    expect(pegs?.reason).toEqual({ kind: 'rest', of: 'left' });
    expect((await accept(proposal.proposal)).json).toMatchObject({ outcome: 'recorded' });
    const { work, crews } = await stateNow();
    expect(work.crews[0]).toMatchObject({ rests, strength, people: 6 });
    expect(work.crews[1]).toMatchObject({ lent, people: 7 });
    expect(crews.left).toMatchObject({ fit: 6 });
  });

  it('for which more people would rest than a crew has is refused, and says where', async () => {
    const rests = [{ from: 600, to: 630, people: 8 }];
    const answer = await server.ask<RefusalReply>(
      'POST',
      `${base()}/proposals`,
      ford.secret('leader'),
      { changes: [{ kind: 'crew-hours', crew: 'right', rests }] },
    );
    expect([answer.status, answer.json.code]).toEqual([422, 'work-faulty']);
    expect(answer.json.faults?.map(({ path }) => path)).toEqual(['/crews/1/rests']);
  });

  it('is compared with the plan in force on the same draws', async () => {
    await accept((await propose()).json.proposal);
    const same = await propose();
    expect(same.json.before?.forecast.p50).toBe(same.json.forecast.p50);
    expect(same.json.gain).toBe('opens at the same time; changes no orders');
    const minutes = { quick: 1, likely: 2, slow: 3 };
    const quicker = await propose([{ kind: 'task', task: 'pegs', minutes }]);
    expect(quicker.json.plan.minutesToOpen).toBeLessThan(same.json.plan.minutesToOpen);
    expect(quicker.json.gain).toMatch(
      /^opens \d+ min earlier; changes (no orders|\d+ orders? for \d+ crews?)$/,
    );
  });

  it('says of changed work what its two openings by planned minutes say', async () => {
    await accept((await propose()).json.proposal);
    server.clock.advance(7.4);
    // Slow estimates that move the forecast far more than the plan.
    const minutes = { quick: 9, likely: 13, slow: 60 };
    const { gain, offer, madeFor, before, forecast } = (
      await propose([{ kind: 'task', task: 'open', minutes }])
    ).json;
    expect(madeFor).toBe(server.clock.now().toISOString());
    const { opens = 0, acceptedOpens } = offer ?? {};
    expect(offer?.gain).toBeCloseTo((acceptedOpens ?? 0) - opens, 6);
    const later = Math.floor(opens + 1e-3) - Math.floor((acceptedOpens ?? 0) + 1e-3);
    expect(gain).toBe(`opens ${later} min later; changes no orders`);
    // By hand, PERT: (9 + 4 x 13 + 60) / 6 in place of (9 + 4 x 13 + 22) / 6 is 38 / 6 more.
    expect(opens - (acceptedOpens ?? 0)).toBeCloseTo(38 / 6, 1);
    // The forecast's middle moves by other minutes: the sentence does not speak of it.
    expect(forecast.p50 - (before?.forecast.p50 ?? 0)).toBeLessThan(5.5);
  });

  it('counts the people who are fit now', async () => {
    const told = command(server, 'tell-strength', { crew: 'left', fit: 3 });
    await server.ask('POST', `${base()}/commands`, ford.secret('left'), told);
    const answer = await server.ask<RefusalReply>(
      'POST',
      `${base()}/proposals`,
      ford.secret('leader'),
      { changes: [] },
    );
    // The move needs four of the left crew.
    expect(answer.status).toBe(422);
    expect(answer.json.sentence).toMatch(/left|Move/i);
  });

  it('that was dropped, or never made, cannot be accepted', async () => {
    const { json: proposal } = await propose();
    const path = `${base()}/proposals/${proposal.proposal}`;
    expect((await server.ask('DELETE', path, ford.secret('leader'))).status).toBe(204);
    expect((await server.ask('DELETE', path, ford.secret('leader'))).status).toBe(404);
    const refused = await accept(proposal.proposal);
    expect([refused.status, refused.json]).toMatchObject([404, { code: 'proposal-unknown' }]);
  });

  it('of another build cannot be accepted', async () => {
    const weir = await openTestBuild(server);
    const { json } = await server.ask<Proposal>(
      'POST',
      `/api/builds/${weir.build}/proposals`,
      weir.secret('leader'),
      { changes: [] },
    );
    expect((await accept(json.proposal)).json).toMatchObject({ code: 'proposal-unknown' });
  });

  it('is stale once crews or loads have changed', async () => {
    const { json: proposal } = await propose();
    const told = command(server, 'tell-strength', { crew: 'left', fit: 5 });
    await server.ask('POST', `${base()}/commands`, ford.secret('left'), told);
    expect((await accept(proposal.proposal)).json).toMatchObject({ code: 'plan-stale' });
  });

  it('with changes that cannot be made names them', async () => {
    const answer = await server.ask<RefusalReply>(
      'POST',
      `${base()}/proposals`,
      ford.secret('leader'),
      { changes: [{ kind: 'load', load: 'truck', arrives: 10 }] },
    );
    expect([answer.status, answer.json.code]).toEqual([422, 'work-faulty']);
    expect(answer.json.faults?.[0]?.found).toBe('truck');
  });
});

describe('a plan being made', () => {
  it('is stopped by its id, and the plan in force stands', async () => {
    let begun = () => {};
    const started = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const planner: Planner = {
      ...plannerHere(),
      plan: (_job, { signal } = {}) => {
        begun();
        return new Promise((_resolve, reject) => {
          signal?.addEventListener('abort', () => reject(signal.reason));
        });
      },
    };
    server = await testServer({ planner });
    ford = await openTestBuild(server);
    const proposal = server.ids.long();
    const asked = propose([], { proposal });
    await started;
    const path = `${base()}/proposals/${proposal}`;
    expect((await server.ask('DELETE', path, ford.secret('leader'))).status).toBe(204);
    const answer = await asked;
    expect([answer.status, answer.json]).toMatchObject([409, { code: 'proposal-cancelled' }]);
  });

  it('keeps its id to itself', async () => {
    const proposal = server.ids.long();
    expect((await propose([], { proposal })).json.proposal).toBe(proposal);
    expect((await propose([], { proposal })).json).toMatchObject({ code: 'id-used-otherwise' });
  });
});

/** A searcher that has found a plan of the test's work and goes on until it is told what to do. */
function slowSearcher() {
  const asked: SearchJob[] = [];
  let begun = () => {};
  const started = new Promise<void>((resolve) => {
    begun = resolve;
  });
  const searcher: Searcher = {
    search: (job, { signal, take, onNews, onProgress } = {}) => {
      asked.push(job);
      onNews?.({ minutesToOpen: 40, lowerBound: 38, schedules: 12, proven: false });
      onProgress?.(1, job.seconds);
      begun();
      return new Promise((resolve, reject) => {
        signal?.addEventListener('abort', () => reject(signal.reason));
        take?.addEventListener('abort', () => {
          resolve(makePlan(job.work, { shape: job.shape, crews: true, past: job.past }));
        });
      });
    },
    close: async () => {},
  };
  return { searcher, asked, started };
}

describe('a long search for a better plan', () => {
  it('ends by itself with a plan that can be accepted', async () => {
    const answer = await propose([], { seconds: 2 });
    expect(answer.status).toBe(201);
    expect(formReader(Proposal)(answer.json).ok).toBe(true);
    expect(answer.json.plan.minutesToOpen).toBeGreaterThanOrEqual(answer.json.plan.lowerBound);
    expect((await accept(answer.json.proposal)).json).toMatchObject({ outcome: 'recorded' });
  });

  it('hands over what it has when the leader says so, and keeps it to be read again', async () => {
    const { searcher, asked, started } = slowSearcher();
    server = await testServer({ searcher });
    ford = await openTestBuild(server);
    const proposal = server.ids.long();
    const running = propose([], { proposal, seconds: 60 });
    await started;
    expect(asked).toMatchObject([{ seconds: 60, accepted: null }]);
    const path = `${base()}/proposals/${proposal}`;
    // Nothing to read before it is made.
    expect((await server.ask('GET', path, ford.secret('leader'))).status).toBe(404);
    expect((await server.ask('POST', `${path}/take`, ford.secret('leader'))).status).toBe(204);
    const answer = await running;
    expect(answer.status).toBe(201);
    expect((await server.ask('GET', path, ford.secret('leader'))).json).toEqual(answer.json);
    // It is over: there is nothing left to take.
    expect((await server.ask('POST', `${path}/take`, ford.secret('leader'))).status).toBe(404);
    expect((await accept(proposal)).json).toMatchObject({ outcome: 'recorded' });
  });

  it('keeps near to the plan in force', async () => {
    const { searcher, asked, started } = slowSearcher();
    server = await testServer({ searcher });
    ford = await openTestBuild(server);
    await accept((await propose()).json.proposal);
    const { plan } = await stateNow();
    const proposal = server.ids.long();
    const running = propose([], { seconds: 5, proposal });
    await started;
    expect(asked[0]?.accepted).toEqual(plan);
    await server.ask('DELETE', `${base()}/proposals/${proposal}`, ford.secret('leader'));
    expect((await running).json).toMatchObject({ code: 'proposal-cancelled' });
  });

  it('is given up when the work it is made for changes, but not for a tick', async () => {
    const { searcher, started } = slowSearcher();
    server = await testServer({ searcher });
    ford = await openTestBuild(server);
    const proposal = server.ids.long();
    const running = propose([], { proposal, seconds: 60 });
    await started;
    const tell = (kind: 'tell-started' | 'tell-strength', body: unknown) =>
      server.ask('POST', `${base()}/commands`, ford.secret('left'), command(server, kind, body));
    await tell('tell-started', { task: 'pegs', crew: 'left' });
    const path = `${base()}/proposals/${proposal}/take`;
    await tell('tell-strength', { crew: 'left', fit: 5 });
    const answer = await running;
    expect([answer.status, answer.json]).toMatchObject([409, { code: 'proposal-cancelled' }]);
    expect((answer.json as unknown as RefusalReply).sentence).toContain(
      'changed while it searched',
    );
    expect((await server.ask('POST', path, ford.secret('leader'))).status).toBe(404);
  });

  it('refuses longer searches than a line is held for', async () => {
    expect((await propose([], { seconds: 600 })).json).toMatchObject({ code: 'form-wrong' });
  });
});

describe('the forecast', () => {
  it('follows an accepted plan, on the same draws every time', async () => {
    const { json: proposal } = await propose();
    await accept(proposal.proposal);
    const frame = await forecastOn(2);
    expect(formReader(ForecastFrame)(frame).ok).toBe(true);
    expect(frame.forecast?.seed).toBe(proposal.forecast.seed);
    expect(frame.forecast?.chanceBy?.minutes).toBe(120);
  });

  it('is kept as it was sent up, beside the record', async () => {
    await accept((await propose()).json.proposal);
    const frame = await forecastOn(2);
    const answer = await server.ask<ToldForecasts>(
      'GET',
      `${base()}/forecasts`,
      ford.secret('commander'),
    );
    expect(answer.json.told).toContainEqual(frame);
    expect(await server.ledger.head(ford.build)).toMatchObject({ number: 2 });
  });

  it('is not made again for what it does not hang on', async () => {
    await accept((await propose()).json.proposal);
    const before = await forecastOn(2);
    const told = command(server, 'tell-near-miss', { what: 'a strap slipped' });
    await server.ask('POST', `${base()}/commands`, ford.secret('left'), told);
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(await forecastOn(2)).toEqual(before);
  });
});
