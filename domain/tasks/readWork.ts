import type { Fault } from '../fault.ts';
import { schemaFaults } from '../kit/schemaFaults.ts';
import { bad, good, type Result } from '../result.ts';
import { workFaults } from './checkWork.ts';
import { Work } from './work.ts';

/** A whole order of work from a parsed JSON file, or every fault at once by JSON path; `file` is named in each. */
export function readWork(json: unknown, file: string): Result<Work, Fault[]> {
  const form = schemaFaults(Work, json);
  const faults = form.length > 0 ? form : workFaults(json as Work);
  return faults.length > 0 ? bad(faults.map((fault) => ({ file, ...fault }))) : good(json as Work);
}
