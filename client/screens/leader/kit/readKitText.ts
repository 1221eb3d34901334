import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Fault } from '#domain/fault.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { readKit } from '#domain/kit/readKit.ts';
import { words } from '../../../words/words.ts';

/** What the text of a kit file comes to: nothing yet, why it is no JSON, its faults, or the kit. */
export type KitText =
  | { readonly is: 'empty' }
  | { readonly is: 'no-json'; readonly sentence: string }
  | { readonly is: 'faulty'; readonly faults: readonly Fault[] }
  | { readonly is: 'good'; readonly kit: Kit };

export function readKitText(text: string): KitText {
  if (text.trim() === '') return { is: 'empty' };
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { is: 'no-json', sentence: words.kitFile.notJson(why) };
  }
  const read = readKit(json);
  return read.ok ? { is: 'good', kit: read.value } : { is: 'faulty', faults: read.reason };
}

/** A middling bridge of the kit over a gap between made banks, dry and with all the room it wants; null where none is. */
export function sampleBridge(
  kit: Kit,
): { readonly bridge: Bridge; readonly ground: Ground } | null {
  const { least, most, length } = kit.bay;
  const middle = Math.ceil((least + most) / 2);
  for (let bays = middle; bays >= 1; bays -= 1) {
    const gap = Math.round((bays * length - kit.bearing.near - kit.bearing.far) * 0.95 * 10) / 10;
    if (gap <= 0) continue;
    const bank = { kind: 'made', height: 3, setback: 0 } as const;
    const ground: Ground = {
      format: 'spanwright-ground',
      version: 1,
      name: kit.title,
      zone: 'UTC',
      place: null,
      gap,
      near: bank,
      far: bank,
      roomBehind: null,
      water: { depth: 0, rise: null },
      loadClass: 1,
    };
    const bridge = designBridge(ground, kit, '');
    if (bridge.ok) return { bridge: bridge.value, ground };
  }
  return null;
}
