import { type AddFault, noDoubles } from './addFault.ts';
import type { Kit } from './kit.ts';

/** Lengths, load classes, launch rules, zones and crews: what the schema cannot say of them. */
export function checkReach(kit: Kit, add: AddFault): void {
  noDoubles('/zones', kit.zones, add);
  noDoubles('/crews', kit.crews, add);
  if (kit.bay.least > kit.bay.most) {
    add('/bay/least', String(kit.bay.least), `at most ${kit.bay.most}, the most bays`);
  }
  for (const [row, { upTo, loadClass }] of kit.loadClasses.entries()) {
    const before = kit.loadClasses[row - 1];
    if (before && upTo <= before.upTo) {
      add(`/loadClasses/${row}/upTo`, String(upTo), `more than ${before.upTo}`);
    }
    if (before && loadClass > before.loadClass) {
      const expected = `at most ${before.loadClass}: a longer bridge never carries more`;
      add(`/loadClasses/${row}/loadClass`, String(loadClass), expected);
    }
  }
  checkManner(kit, add);
}

function checkManner(kit: Kit, add: AddFault): void {
  const wanted = kit.manner === 'launched' ? 'launch' : 'boom';
  const unwanted = kit.manner === 'launched' ? 'boom' : 'launch';
  if (!kit[wanted]) {
    add(`/${wanted}`, 'nothing', `the rules of a ${kit.manner} kit`);
  }
  if (kit[unwanted]) {
    add(`/${unwanted}`, 'rules', `nothing: this kit is ${kit.manner}`);
  }
  const lot = (kit.launch?.lot ?? 0) * kit.bay.length;
  if (kit.launch && lot > kit.launch.longestMove) {
    add('/launch/longestMove', `${kit.launch.longestMove} m`, `at least ${lot} m, one lot of bays`);
  }
  if (kit.manner === 'floated' && kit.nose) {
    add('/nose', 'a nose', 'nothing: a floated bridge has none');
  }
}
