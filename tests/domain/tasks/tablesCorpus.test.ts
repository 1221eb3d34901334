import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTables } from '#domain/tasks/tables.ts';

const corpus = new URL('../../corpus/tables/', import.meta.url);

function read(folder: 'good' | 'bad', file: string) {
  const text = readFileSync(new URL(`${folder}/${file}`, corpus), 'utf8');
  return readTables({ tasks: { file, text } });
}

/** Where each bad table is wrong: row and column, written down when the table was. */
const wrong: Record<string, string[]> = {
  'empty.csv': ['1 -'],
  'header-only.csv': ['2 -'],
  'semicolons.csv': ['1 task;name;likely', '1 task', '1 likely'],
  'no-likely.csv': ['1 likely'],
  'ragged.csv': ['3 -', '4 -'],
  'open-quote.csv': ['2 -'],
  'cut-off.csv': ['3 -'],
  'minutes.csv': ['2 likely', '3 quick', '4 likely', '5 slow', '6 quick', '7 likely'],
  'references.csv': ['3 after', '4 after', '5 task'],
  'loop.csv': ['2 after'],
  'people.csv': ['2 people', '3 people', '4 crews', '5 people'],
  'flags.csv': ['2 keepoff', '3 hold', '3 opens'],
  'ids.csv': ['2 task', '3 task', '4 zones'],
};

describe('The corpus of task tables', () => {
  it.each(readdirSync(new URL('good/', corpus)))('reads %s', (file) => {
    const work = read('good', file);
    expect(work.ok ? [] : work.reason).toEqual([]);
  });

  it.each(readdirSync(new URL('bad/', corpus)))('tells every fault of %s', (file) => {
    const work = read('bad', file);
    const places = work.ok ? [] : work.reason.map(({ row, column }) => `${row} ${column ?? '-'}`);
    expect(places).toEqual(wrong[file]);
  });
});
