import type { Head, Ledger } from '../ledger/ledger.ts';
import type { RecordLine } from './recordFile.ts';

const page = 500;
const allTold = 1_000_000_000;

/**
 * The lines of a record file. `heads` are the builds that go into it; `whole` takes their receipts, links and
 * forecasts told along, as a backup needs them.
 */
export async function* recordFileLines(
  ledger: Ledger,
  heads: readonly Head[],
  about: { readonly program: string; readonly writtenAt: string; readonly whole: boolean },
): AsyncGenerator<string> {
  const { program, writtenAt, whole } = about;
  let lines = 0;
  const text = (line: RecordLine): string => {
    lines += 1;
    return JSON.stringify(line);
  };
  yield text({ line: 'head', format: 'spanwright-record', version: 1, program, writtenAt });
  for (const { build, number, hash } of heads) {
    yield text({ line: 'build', build, number, hash });
    for (let after = 0; after < number; after += page) {
      const entries = await ledger.entries(build, after, Math.min(page, number - after));
      for (const entry of entries) {
        yield text({
          line: 'entry',
          build,
          number: entry.number,
          hash: entry.hash,
          text: entry.text,
        });
      }
    }
    if (!whole) continue;
    for (const { id, request, status, text: reply } of await ledger.receipts(build)) {
      yield text({ line: 'receipt', build, id, request, status, text: reply });
    }
    for (const { role, ...link } of await ledger.links(build)) {
      if (role !== 'host') yield text({ line: 'link', ...link, build, role });
    }
    for (const { number: on, at, text: frame } of await ledger.told(build, allTold)) {
      yield text({ line: 'told', build, number: on, at, text: frame });
    }
  }
  yield JSON.stringify({ line: 'end', lines } satisfies RecordLine);
}
