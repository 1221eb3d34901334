import type { Fault } from '#domain/fault.ts';
import { bad, good, type Result } from '#domain/result.ts';
import { formReader } from '../form.ts';
import { chainStart, firstBadEntry } from '../ledger/chain.ts';
import type { Head, KeptBuild, StoredEntry } from '../ledger/ledger.ts';
import { RecordLine } from './recordFile.ts';

/** A build out of a record file, its chain checked. */
export type BuildInFile = { readonly head: Head; readonly kept: KeptBuild };

const readLine = formReader(RecordLine);

type Open = {
  readonly head: Head;
  readonly entries: StoredEntry[];
  readonly receipts: KeptBuild['receipts'][number][];
  readonly links: KeptBuild['links'][number][];
  readonly told: KeptBuild['told'][number][];
};

/**
 * Reads a record file and checks all of it: every line, every hash, the head of every build and that nothing is
 * missing at the end. Nothing is returned of a file with a fault; each fault names its row.
 */
export function readRecordFile(
  text: string,
  file: string,
): Result<readonly BuildInFile[], Fault[]> {
  const builds = new Map<string, Open>();
  const rows = text.replace(/\r?\n$/, '').split(/\r?\n/);
  for (const [index, row] of rows.entries()) {
    const at = { file, row: index + 1 };
    const read = readLine(parsed(row));
    if (!read.ok) {
      return bad([{ ...at, found: row.slice(0, 60), expected: 'a line of a Spanwright record' }]);
    }
    const fault = takeLine(read.value, builds, index, rows.length);
    if (fault) return bad([{ ...at, ...fault }]);
  }
  const read: BuildInFile[] = [];
  for (const [build, { head, entries, ...rest }] of builds) {
    const broken = firstBadEntry(entries);
    if (broken)
      return bad([{ file, found: `build ${build}: ${broken.sentence}`, expected: whole }]);
    const last = entries.at(-1) ?? { number: 0, hash: chainStart };
    if (last.number !== head.number || last.hash !== head.hash) {
      const found = `build ${build} ends with entry ${last.number}, not with ${head.number} as it should`;
      return bad([{ file, found, expected: whole }]);
    }
    read.push({ head, kept: { build, texts: entries.map((entry) => entry.text), ...rest } });
  }
  return good(read);
}

const whole = 'a record that nobody has changed';

function takeLine(
  line: RecordLine,
  builds: Map<string, Open>,
  index: number,
  rows: number,
): { readonly found: string; readonly expected: string } | null {
  if ((line.line === 'head') !== (index === 0)) {
    return { found: `a "${line.line}" line`, expected: 'one head, in the first line' };
  }
  if ((line.line === 'end') !== (index === rows - 1)) {
    return {
      found: `a "${line.line}" line`,
      expected: 'an end, in the last line: the file is cut',
    };
  }
  switch (line.line) {
    case 'head':
      return null;
    case 'end':
      return line.lines === index
        ? null
        : { found: `${index} lines before the end`, expected: `${line.lines} lines` };
    case 'build': {
      const { build, number, hash } = line;
      if (builds.has(build)) return { found: `build ${build} again`, expected: 'each build once' };
      builds.set(build, {
        head: { build, number, hash },
        entries: [],
        receipts: [],
        links: [],
        told: [],
      });
      return null;
    }
    default: {
      const open = builds.get(line.build);
      if (!open) return { found: `build ${line.build}`, expected: 'its build line before it' };
      addTo(open, line);
      return null;
    }
  }
}

function addTo(
  open: Open,
  line: Extract<RecordLine, { line: 'entry' | 'receipt' | 'link' | 'told' }>,
): void {
  switch (line.line) {
    case 'entry':
      open.entries.push({ number: line.number, text: line.text, hash: line.hash });
      return;
    case 'receipt': {
      const { id, request, status, text } = line;
      open.receipts.push({ id, request, status, text });
      return;
    }
    case 'link': {
      const { line: _line, ...link } = line;
      open.links.push(link);
      return;
    }
    case 'told':
      open.told.push({ number: line.number, at: line.at, text: line.text });
  }
}

function parsed(row: string): unknown {
  try {
    return JSON.parse(row);
  } catch {
    return undefined;
  }
}
