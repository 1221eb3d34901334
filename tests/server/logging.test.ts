import { Writable } from 'node:stream';
import { expect, it } from 'vitest';
import { command, openTestBuild, testServer } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';

it('the log names what failed, and never a secret, however much is logged', async () => {
  let log = '';
  const stream = new Writable({
    write: (piece, _encoding, done) => {
      log += piece;
      done();
    },
  });
  const ledger = memoryLedger();
  const server = await testServer({
    ledger: { ...ledger, told: () => Promise.reject(new Error('disk full')) },
    logger: { level: 'trace', redact: ['req.headers.authorization'], stream },
  });
  const ford = await openTestBuild(server);
  const told = command(server, 'tell-near-miss', { what: 'a strap slipped' });
  await server.ask('POST', `/api/builds/${ford.build}/commands`, ford.secret('left'), told);
  await server.ask('GET', `/api/builds/${ford.build}/forecasts`, ford.secret('leader'));
  expect(log).toContain('disk full');
  const secrets = [server.hostSecret, ...['leader', 'left', 'commander'].map(ford.secret)];
  for (const secret of secrets) expect(log).not.toContain(secret);
});
