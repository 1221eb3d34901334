import type { Kit } from '#domain/kit/kit.ts';
import { liftNotes } from '#domain/kit/teamLift.ts';
import { faultLine } from './faultLine.ts';
import type { CommandIo } from './io.ts';
import { kitFromFile } from './kitFile.ts';

const usage = 'spanwright kit check FILE';

/**
 * `spanwright kit check FILE`: every fault of a kit file on its own line, or what the kit is; then what in it should
 * be thought about. Resolves to the exit code: 0 no faults, 2 faults or wrong arguments.
 */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const [verb, file, ...more] = args;
  if (verb !== 'check' || file === undefined || more.length > 0) {
    io.err(usage);
    return 2;
  }
  const found = await kitFromFile(file, io);
  if (!found.ok) {
    for (const fault of found.reason) {
      io.err(faultLine(fault));
    }
    return 2;
  }
  const { kit } = found.value;
  io.out(`${file}: no faults. ${about(kit)}`);
  for (const note of liftNotes(kit)) {
    io.out(`Note: ${note}`);
  }
  return 0;
}

function about(kit: Kit): string {
  const length = (bays: number) => `${bays} bays (${(bays * kit.bay.length).toFixed(1)} m)`;
  const use = kit.notForUse ? ', not for use' : '';
  return `${kit.title}, ${kit.manner}, ${length(kit.bay.least)} to ${length(kit.bay.most)}${use}.`;
}
