import type { Fault } from '../fault.ts';
import { schemaFaults } from '../kit/schemaFaults.ts';
import { bad, good, type Result } from '../result.ts';
import { Ground } from './ground.ts';

/** A ground from a parsed JSON file, or every fault at once by JSON path. `file` is named in the faults. */
export function readGround(json: unknown, file?: string): Result<Ground, Fault[]> {
  const faults = schemaFaults(Ground, json);
  if (faults.length === 0 && !isZone((json as Ground).zone)) {
    faults.push({
      path: '/zone',
      found: JSON.stringify((json as Ground).zone),
      expected: 'an IANA time zone, like "UTC" or "Europe/Oslo"',
    });
  }
  if (faults.length > 0) {
    return bad(faults.map((fault) => (file === undefined ? fault : { file, ...fault })));
  }
  return good(json as Ground);
}

/** The language's own list of zones decides; it throws on names it does not know. */
function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
