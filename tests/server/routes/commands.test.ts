import { beforeEach, describe, expect, it } from 'vitest';
import type { Receipt, Snapshot } from '#shared/wire.ts';
import {
  command,
  openTestBuild,
  type TestBuild,
  type TestServer,
  testServer,
} from '#tests/support/server.ts';

let server: TestServer;
let ford: TestBuild;
beforeEach(async () => {
  server = await testServer();
  ford = await openTestBuild(server);
});

const path = () => `/api/builds/${ford.build}/commands`;
const send = (secret: string | undefined, request: unknown) =>
  server.ask<Receipt>('POST', path(), secret ?? '', request);
const stateOf = async () => {
  const answer = await server.ask<Snapshot>(
    'GET',
    `/api/builds/${ford.build}`,
    ford.secrets['leader'] ?? '',
  );
  return answer.json.state;
};

describe('a command', () => {
  it('is recorded and answered with the number of its entry', async () => {
    const told = command(server, 'tell-started', { task: 'pegs', crew: 'left' });
    const answer = await send(ford.secrets['left'], told);
    expect(answer.json).toMatchObject({ id: told.id, outcome: 'recorded', entry: 2, breaches: [] });
    expect(answer.status).toBe(200);
    expect((await stateOf()).tasks['pegs']?.status).toBe('at-work');
  });
});
