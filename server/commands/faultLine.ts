import type { Fault } from '#domain/fault.ts';

/** One fault on one line: where it is, what was found, what was expected. */
export function faultLine({ file, path, row, column, found, expected }: Fault): string {
  const place = [
    file,
    path,
    row === undefined ? undefined : `row ${row}`,
    column === undefined ? undefined : `column ${column}`,
  ].filter((part) => part !== undefined);
  return `${place.join(', ')}: found ${found}, expected ${expected}`;
}
