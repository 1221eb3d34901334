import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { formReader } from '#server/form.ts';
import { RecordPage } from '#shared/wireBuilds.ts';
import { command, openTestBuild, testServer } from '#tests/support/server.ts';

it('the record comes page by page with exact texts, and anyone can check its chain', async () => {
  const server = await testServer();
  const { build, secret } = await openTestBuild(server);
  for (const what of ['a pin dropped', '“schräg” 🚧', '\u2028 odd spaces ']) {
    const told = command(server, 'tell-near-miss', { what });
    await server.ask('POST', `/api/builds/${build}/commands`, secret('left'), told);
  }
  const page = async (query: string): Promise<RecordPage> => {
    const path = `/api/builds/${build}/record${query}`;
    const answer = await server.ask('GET', path, secret('inspector'));
    const read = formReader(RecordPage)(answer.json);
    if (!read.ok) throw new Error(answer.text);
    return read.value;
  };
  const whole = await page('');
  const pages = [await page('?limit=3'), await page('?after=3&limit=3')];
  expect(pages.flatMap(({ entries }) => entries)).toEqual(whole.entries);

  let hash = '0'.repeat(64);
  for (const entry of whole.entries) {
    hash = createHash('sha256').update(`${hash}\n${entry.text}`).digest('hex');
    expect(entry.hash).toBe(hash);
  }
  expect(whole.head).toEqual({ number: 4, hash });
  const told = whole.entries.slice(1).map(({ text }) => JSON.parse(text).body.what);
  expect(told).toEqual(['a pin dropped', '“schräg” 🚧', '\u2028 odd spaces ']);
});
