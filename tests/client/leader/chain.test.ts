import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { beforeAll, followChain } from '#client/screens/leader/record/chain.ts';

/** sha256 over the hash before, a line feed and the exact text, as the documented record format has it. */
function record(...texts: string[]) {
  let hash = '0'.repeat(64);
  return texts.map((text, at) => {
    hash = createHash('sha256').update(`${hash}\n${text}`).digest('hex');
    return { number: at + 1, text, hash };
  });
}

const good = record('{"number":1}', '{"number":2,"é":"ü"}', '{"number":3}');

describe('the chain of a record', () => {
  it('holds for the record as it is kept, whole or in pieces', async () => {
    const whole = await followChain(beforeAll, good);
    expect(whole).toEqual({ ok: true, end: { number: 3, hash: good[2]!.hash } });
    const first = await followChain(beforeAll, good.slice(0, 2));
    expect(first.ok && (await followChain(first.end, good.slice(2)))).toEqual(whole);
  });

  it('breaks at the first entry that was changed, left out or put elsewhere', async () => {
    const changed = good.map((entry) => (entry.number === 2 ? { ...entry, text: '{}' } : entry));
    expect(await followChain(beforeAll, changed)).toEqual({ ok: false, number: 2 });
    expect(await followChain(beforeAll, [good[0]!, good[2]!])).toEqual({ ok: false, number: 2 });
    expect(await followChain(beforeAll, [good[1]!, good[0]!])).toEqual({ ok: false, number: 1 });
  });

  it('of an empty record is its beginning', async () => {
    expect(await followChain(beforeAll, [])).toEqual({ ok: true, end: beforeAll });
  });
});
