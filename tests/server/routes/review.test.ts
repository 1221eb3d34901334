import { Value } from 'typebox/value';
import { beforeAll, describe, expect, it } from 'vitest';
import { Review } from '#domain/forecast/after/review.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { readCsv } from '#domain/tasks/csv.ts';
import type { RefusalReply, Snapshot } from '#shared/wire.ts';
import type { KitListed } from '#shared/wireBuilds.ts';
import { ReviewReply } from '#shared/wireReview.ts';
import { playedBuild } from '#tests/support/playedBuild.ts';
import {
  larchFordBridge,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

const kept = new Map<string, string>();
let server: TestServer;
let ford: TestBuild;
let earlier: TestBuild;
let half: TestBuild;
let tables: TestBuild;

beforeAll(async () => {
  server = await testServer({
    keepKit: async (name, text) => {
      if (name === 'full-disk') throw new Error('disk full');
      kept.set(name, text);
    },
  });
  server.clock.advance(3 * 24 * 60);
  earlier = await playedBuild(server, '2026-03-01T08:00:00.000Z');
  ford = await playedBuild(server, '2026-03-02T08:00:00.000Z');
  half = await playedBuild(server, '2026-03-02T08:00:00.000Z', 120);
  tables = await openTestBuild(server);
});

async function review(build: TestBuild) {
  const path = `/api/builds/${build.build}/review`;
  const answer = await server.ask<ReviewReply>('GET', path, build.secret('leader'));
  expect(answer.status, answer.text.slice(0, 300)).toBe(200);
  return answer.json;
}

const accept = (build: TestBuild, body: unknown) =>
  server.ask<KitListed & RefusalReply>(
    'POST',
    `/api/builds/${build.build}/review/kit`,
    build.secret('leader'),
    body,
  );

describe('the review of a build', () => {
  it('holds every finished task against the plan, and each crew', async () => {
    const found = await review(ford);
    expect(Value.Check(ReviewReply, found)).toBe(true);
    const { state } = (
      await server.ask<Snapshot>('GET', `/api/builds/${ford.build}`, ford.secret('leader'))
    ).json;
    const timed = state.work.tasks.filter(({ hold }) => !hold);
    expect(found.review.tasks.map(({ task }) => task)).toEqual(timed.map(({ id }) => id));
    expect(found.review.crews.map(({ crew }) => crew)).toContain('left');
  });

  it('rests its proposals on this and the other open builds of the kit, and on no other', async () => {
    const found = await review(ford);
    expect(found).toMatchObject({ open: true, kit: 'heron', earlier: 1 });
    expect(found.review.proposals.length).toBeGreaterThan(5);
    expect(Math.max(...found.review.proposals.map(({ builds }) => builds))).toBe(2);
  });

  it('proposes nothing before the bridge is open: what is not finished yet went slowly', async () => {
    const found = await review(half);
    expect(found).toMatchObject({ open: false, kit: 'heron', earlier: 0 });
    expect(found.review.tasks.length).toBeGreaterThan(10);
    expect(found.review.proposals).toEqual([]);
    const refused = await accept(half, { name: 'heron-half', tasks: ['bay'] });
    expect(refused.json).toMatchObject({ code: 'task-unknown' });
    expect(refused.json.sentence).toMatch(/once the bridge is open/);
  });

  it('has no kit where the build came from tables, and nothing to accept', async () => {
    expect(await review(tables)).toMatchObject({ kit: null, review: { tasks: [], crews: [] } });
    const refused = await accept(tables, { name: 'own', tasks: ['bay'] });
    expect(refused.json.code).toBe('kit-unknown');
  });

  it('is exported as JSON that its schema knows, and as tables', async () => {
    const file = (name: string) =>
      server.ask<Review>('GET', `/api/builds/${ford.build}/review/${name}`, ford.secret('leader'));
    const json = await file('review.json');
    expect(Value.Check(Review, json.json)).toBe(true);
    const found = (await review(ford)).review;
    expect(json.json).toEqual(found);
    const rows = {
      'tasks.csv': found.tasks,
      'crews.csv': found.crews,
      'proposals.csv': found.proposals,
    };
    for (const [name, { length }] of Object.entries(rows)) {
      const csv = await file(name);
      expect(csv.headers['content-type']).toBe('text/csv; charset=utf-8');
      expect(csv.headers['content-disposition']).toBe(`attachment; filename="larch-ford-${name}"`);
      const read = readCsv(name, csv.text);
      expect(read.rows.length, name).toBe(length + 1);
      expect(read.faults).toEqual([]);
    }
    expect((await file('secrets.csv')).status).toBe(400);
  });
});

describe('an own copy of the kit', () => {
  it('carries the accepted minutes, is kept as a kit file, and later builds can choose it', async () => {
    const { proposals } = (await review(ford)).review;
    const [first, second] = proposals;
    const made = await accept(ford, { name: 'heron-own', tasks: [first!.task] });
    expect([made.status, made.json.name]).toEqual([201, 'heron-own']);
    const { json: kit } = await server.ask<Kit>('GET', '/api/kits/heron-own', server.hostSecret);
    const minutesOf = (task: string) => kit.order.find(({ id }) => id === task)?.minutes;
    expect(minutesOf(first!.task)).toEqual(first!.minutes);
    expect(minutesOf(second!.task)).toEqual(second!.was);
    expect(JSON.parse(kept.get('heron-own')!)).toEqual(kit);
    const source = { ...larchFordBridge, kit: 'heron-own' };
    const next = await openTestBuild(server, { source });
    const { json } = await server.ask<Snapshot>(
      'GET',
      `/api/builds/${next.build}`,
      next.secret('leader'),
    );
    expect(json.state.bridge?.kit).toMatchObject({ name: 'heron-own', hash: made.json.hash });
  });

  it('needs a name of its own and proposals that there are', async () => {
    const { proposals } = (await review(ford)).review;
    const task = proposals[0]!.task;
    expect((await accept(ford, { name: 'heron', tasks: [task] })).json.code).toBe('kit-exists');
    expect((await accept(ford, { name: 'mine', tasks: ['mast'] })).json.code).toBe('task-unknown');
    expect((await accept(ford, { name: '../mine', tasks: [task] })).json.code).toBe('form-wrong');
    expect([...kept.keys()]).toEqual(['heron-own']);
  });

  it('that cannot be kept is not here either, and the same may be asked again', async () => {
    const task = (await review(ford)).review.proposals[0]!.task;
    for (const _ of [1, 2]) {
      const failed = await accept(ford, { name: 'full-disk', tasks: [task] });
      expect([failed.status, failed.json.code]).toEqual([503, 'storage-failed']);
    }
    const gone = await server.ask('GET', '/api/kits/full-disk', server.hostSecret);
    expect(gone.status).toBe(404);
  });

  it('is for the leader alone', async () => {
    const body = { name: 'theirs', tasks: ['bay'] };
    for (const who of ['log', 'inspector', 'commander', 'left']) {
      const path = `/api/builds/${earlier.build}/review`;
      expect((await server.ask('GET', path, earlier.secret(who))).status).toBe(403);
      expect((await server.ask('POST', `${path}/kit`, earlier.secret(who), body)).status).toBe(403);
    }
  });
});
