import { type AddFault, noDoubles } from './addFault.ts';
import type { Kit, Part } from './kit.ts';

/** Grams: masses in a kit file are written to the gram at the finest. */
const hair = 1e-3;

/** Parts, masses and loads: groups that hold together, masses that add up, loads that carry what there is. */
export function checkStores(kit: Kit, add: AddFault): void {
  noDoubles('/parts', kit.parts, add);
  noDoubles('/loads', kit.loads, add);
  const per = new Map<string, Part['per']>();
  for (const [row, part] of kit.parts.entries()) {
    const before = per.get(part.group);
    if (before !== undefined && before !== part.per) {
      add(`/parts/${row}/per`, part.per, `"${before}", as the other parts of group ${part.group}`);
    }
    per.set(part.group, before ?? part.per);
  }
  checkMass(kit, 'bay', 'bay', kit.bay.bare, '/bay/bare', add);
  checkMass(kit, 'deck', 'bay', kit.bay.deck, '/bay/deck', add);
  checkMass(kit, 'nose', 'section', kit.nose?.mass ?? 0, '/nose/mass', add);
  checkLoads(kit, per, add);
}

/** A group that carries a launch mass must weigh just that: the balance is reckoned from the one, loads from the other. */
function checkMass(
  kit: Kit,
  group: string,
  per: Part['per'],
  mass: number,
  path: string,
  add: AddFault,
): void {
  const parts = kit.parts.filter((part) => part.group === group);
  const wrong = parts.find((part) => part.per !== per);
  if (wrong) {
    add(`/parts/${kit.parts.indexOf(wrong)}/per`, wrong.per, `"${per}" for group ${group}`);
  }
  const sum = parts.reduce((kilograms, part) => kilograms + part.mass * part.count, 0);
  if (Math.abs(sum - mass) > hair) {
    add(path, `${mass} kg`, `${sum} kg, the sum of the parts of group ${group}`);
  }
}

function checkLoads(kit: Kit, per: ReadonlyMap<string, Part['per']>, add: AddFault): void {
  const known = [...per.keys()].join(', ');
  for (const [row, load] of kit.loads.entries()) {
    for (const [field, groups] of [
      ['groups', load.groups],
      ['last', load.last ?? []],
    ] as const) {
      for (const [at, group] of groups.entries()) {
        if (!per.has(group)) {
          add(`/loads/${row}/${field}/${at}`, group, `a group of parts: ${known}`);
        }
      }
    }
    const bays = load.bays;
    if (bays && per.get(bays.group) !== 'bay') {
      add(`/loads/${row}/bays/group`, bays.group, 'a group of parts counted per bay');
    }
    if (bays?.to !== undefined && bays.to < (bays.from ?? 1)) {
      add(`/loads/${row}/bays/to`, String(bays.to), `at least ${bays.from ?? 1}`);
    }
  }
}
