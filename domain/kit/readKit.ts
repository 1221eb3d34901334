import type { Fault } from '../fault.ts';
import { bad, good, type Result } from '../result.ts';
import { faultList } from './addFault.ts';
import { checkLengths } from './checkLengths.ts';
import { checkOrder } from './checkOrder.ts';
import { checkReach } from './checkReach.ts';
import { checkStores } from './checkStores.ts';
import { Kit } from './kit.ts';
import { schemaFaults } from './schemaFaults.ts';

/**
 * A kit from a parsed JSON file, or every fault at once by JSON path; `file` is named in each. Three looks, each only
 * when the one before found nothing: the form (unknown fields are faults), what the fields say to each other, and the
 * order of work written out for every length that the kit reaches.
 */
export function readKit(json: unknown, file?: string): Result<Kit, Fault[]> {
  const named = (faults: Fault[]) =>
    bad(faults.map((fault) => (file === undefined ? fault : { file, ...fault })));
  const form = schemaFaults(Kit, json);
  if (form.length > 0) {
    return named(form);
  }
  const kit = json as Kit;
  const { faults, add } = faultList();
  checkReach(kit, add);
  checkStores(kit, add);
  checkOrder(kit, add);
  if (faults.length === 0) {
    checkLengths(kit, add);
  }
  return faults.length > 0 ? named(faults) : good(kit);
}
