import type { Fault } from '../fault.ts';

/** Notes a fault at a place in the file. */
export type AddFault = (path: string, found: string, expected: string) => void;

/** A list of faults and the function that notes one in it. */
export function faultList(): { readonly faults: Fault[]; readonly add: AddFault } {
  const faults: Fault[] = [];
  return {
    faults,
    add: (path, found, expected) => {
      faults.push({ path, found, expected });
    },
  };
}

/** Notes every id that an earlier entry of the list has already. */
export function noDoubles(
  path: string,
  entries: readonly { readonly id: string }[],
  add: AddFault,
): void {
  const seen = new Set<string>();
  for (const [row, { id }] of entries.entries()) {
    if (seen.has(id)) {
      add(`${path}/${row}/id`, id, 'an id that no earlier entry has');
    }
    seen.add(id);
  }
}
