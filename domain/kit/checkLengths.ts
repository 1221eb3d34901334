import type { Bridge } from '../bridge/bridge.ts';
import { designBridge } from '../bridge/design.ts';
import type { Ground } from '../bridge/ground.ts';
import { expand } from '../tasks/fromKit/expand.ts';
import { findLoop } from '../tasks/graph.ts';
import type { AddFault } from './addFault.ts';
import type { Kit } from './kit.ts';

/**
 * Writes the order of work out for the lengths that the kit reaches and notes what does not hold together at any:
 * doubled ids, placeholders left over, crews and zones that are not there, parts that no load carries, loops; and
 * template tasks and references that come to nothing at every length.
 */
export function checkLengths(kit: Kit, add: AddFault): void {
  const bridges = trialBridges(kit);
  if (bridges.length === 0) {
    add('/bay', 'no length that can be built', 'nose, margin and limits that let one length reach');
    return;
  }
  const met = new Set<string>();
  const said = new Set<string>();
  const once: AddFault = (path, found, expected) => {
    if (!said.has(path)) {
      said.add(path);
      add(path, found, expected);
    }
  };
  for (const bridge of bridges) {
    const expansion = expand(bridge, kit);
    for (const path of expansion.met) {
      met.add(path);
    }
    for (const { path = '', found, expected } of expansion.faults) {
      once(path, `${found} (with ${bridge.bays} bays)`, expected);
    }
    const loop = findLoop(expansion.work);
    if (loop) {
      once('/order', `${loop.join(', ')} in a circle (with ${bridge.bays} bays)`, 'no circle');
    }
  }
  for (const path of pathsOf(kit)) {
    if (!met.has(path)) {
      once(path, 'nothing at any length', 'a task or reference that comes to something');
    }
  }
}

/**
 * Most lengths that are written out: all of a common kit. Of one with more, these many spread from the shortest to the
 * longest, so that a check stays a matter of seconds.
 */
const mostLengths = 16;

/** Bridges of the numbers of bays tried: with the widest gap each reaches, and one half a bay narrower. */
function trialBridges(kit: Kit): Bridge[] {
  const bridges: Bridge[] = [];
  for (const bays of lengthsTried(kit)) {
    const widest = bays * kit.bay.length - kit.bearing.near - kit.bearing.far;
    for (const gap of [widest, widest - kit.bay.length / 2]) {
      const ground = trialGround(gap);
      const bridge = gap > 0 ? designBridge(ground, kit, '') : null;
      if (!bridge?.ok) {
        continue;
      }
      bridges.push(bridge.value);
      // What is only for soft banks has to hold together too.
      if (kit.order.some(({ only }) => only === 'soft-bank') && bridges.length === 1) {
        bridges.push({ ...bridge.value, softBanks: ['near', 'far'] });
      }
      // A kit without a drill builds all at once where nobody has measured the room, and in stages where it is short.
      const roomBehind = kit.launch?.lot === undefined ? bridge.value.roomNeeded * 0.75 : null;
      const cramped = roomBehind ? designBridge({ ...ground, roomBehind }, kit, '') : null;
      if (cramped?.ok) {
        bridges.push(cramped.value);
      }
    }
  }
  return bridges;
}

function lengthsTried({ bay: { least, most } }: Kit): number[] {
  const count = Math.min(mostLengths, most - least + 1);
  const step = count === 1 ? 0 : (most - least) / (count - 1);
  return Array.from({ length: count }, (_, at) => Math.round(least + at * step));
}

function trialGround(gap: number): Ground {
  const bank = { kind: 'made', height: null, setback: 0 } as const;
  return {
    format: 'spanwright-ground',
    version: 1,
    name: 'Trial',
    zone: 'UTC',
    place: null,
    gap,
    near: bank,
    far: bank,
    roomBehind: null,
    water: { depth: null, rise: null },
    loadClass: 1,
  };
}

/** Paths of all template tasks and references, as `expand` names those that came to something. */
function pathsOf(kit: Kit): string[] {
  // Weights on the tail may be wanted over no gap that is tried, and at a nose that somebody wishes all the same.
  const rare = new Set(
    kit.order.filter(({ only }) => only === 'counterweight').map(({ id }) => id),
  );
  return kit.order.flatMap((template, row) => {
    const path = `/order/${row}`;
    if (rare.has(template.id)) {
      return [];
    }
    return [
      path,
      ...template.after.flatMap(({ task }, at) => (rare.has(task) ? [] : `${path}/after/${at}`)),
      ...(template.before ?? []).map((_, at) => `${path}/before/${at}`),
      ...(template.hold?.redo ?? []).map((_, at) => `${path}/hold/redo/${at}`),
    ];
  });
}
