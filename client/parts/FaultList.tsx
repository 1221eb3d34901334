import type { Fault } from '#domain/fault.ts';
import { words } from '../words/words.ts';

/** Everything wrong in something a person wrote, each with its place, what was found and what is expected. */
export function FaultList({ faults }: { readonly faults: readonly Fault[] }) {
  if (faults.length === 0) return null;
  return (
    <ul className="faults">
      {faults.map((fault) => (
        <li key={`${faultPlace(fault)} ${fault.found} ${fault.expected}`}>
          <strong>{faultPlace(fault)}</strong> {words.fault.found(fault.found)}{' '}
          {words.fault.expected(fault.expected)}
        </li>
      ))}
    </ul>
  );
}

function faultPlace({ file, path, row, column }: Fault): string {
  return [
    file,
    row === undefined ? undefined : words.fault.row(row),
    column === undefined ? undefined : words.fault.column(column),
    path,
  ]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
}
