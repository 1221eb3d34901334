import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv } from '#domain/tasks/csv.ts';

const cellsOf = (text: string) => readCsv('t.csv', text).rows.map(({ cells }) => cells);

describe('Comma-separated values as RFC 4180 has them', () => {
  it('splits lines that end with CRLF or LF, with or without a last line end', () => {
    expect(cellsOf('a,b\r\n1,2\r\n')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
    expect(cellsOf('a,b\n1,2')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });

  it('reads commas, line breaks and doubled quotes inside quoted cells', () => {
    // The examples of RFC 4180, section 2, rules 5 to 7.
    expect(cellsOf('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(cellsOf('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('skips a byte order mark and blanks around cells', () => {
    expect(cellsOf('\uFEFFa , b\n')).toEqual([['a', 'b']]);
  });

  it('counts blank lines as rows and leaves them out', () => {
    expect(readCsv('t.csv', 'a\n\n\nb\n').rows).toEqual([
      { row: 1, cells: ['a'] },
      { row: 4, cells: ['b'] },
    ]);
  });

  it('keeps empty cells at the end of a row', () => {
    expect(cellsOf('a,,\n,,b')).toEqual([
      ['a', '', ''],
      ['', '', 'b'],
    ]);
  });

  it.each([
    ['a,b\n1,"2', 2],
    ['a,b\n1,x"2"\n3,4', 2],
    ['a,b\n1,2\n"3" x,4', 3],
  ])('notes a quote out of place at its row: %j', (text, row) => {
    const { faults } = readCsv('t.csv', text);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ file: 't.csv', row });
  });

  it('goes on reading behind a quote out of place', () => {
    expect(readCsv('t.csv', 'a\nx"y\nb').rows.map(({ row }) => row)).toEqual([1, 3]);
  });

  it('reads back whatever cells are written with quotes', () => {
    const cell = fc.string().map((text) => text.trim());
    const row = fc
      .array(cell, { minLength: 1, maxLength: 5 })
      .filter((cells) => cells.some((one) => one !== ''));
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), (rows) => {
        const text = rows
          .map((cells) => cells.map((one) => `"${one.replaceAll('"', '""')}"`).join(','))
          .join('\r\n');
        expect(cellsOf(text)).toEqual(rows);
      }),
    );
  });
});
