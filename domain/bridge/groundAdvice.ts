import type { Kit } from '../kit/kit.ts';
import { footings } from './footings.ts';
import type { Ground } from './ground.ts';
import { setbackRule } from './setbackRule.ts';
import type { StageStatics } from './statics/stageStatics.ts';
import { waterTime } from './waterTime.ts';
import { metres } from './way.ts';

/** Something about the site that wants work, care or another place. */
export type GroundAdvice = {
  readonly code:
    | 'setback'
    | 'cross-fall'
    | 'roller-fall'
    | 'approach'
    | 'wind'
    | 'soft-bank'
    | 'footing'
    | 'hold-back'
    | 'landing-height'
    | 'water';
  readonly bank: 'near' | 'far' | null;
  readonly sentence: string;
};

/**
 * What the ground asks of the work besides the bridge: setbacks, packing, footings, matting, holding back, and the time
 * that the water leaves. `stages` are the statics of the launch with the fall of that ground; none where there is no
 * bridge yet. `minutesToOpen` is what the water is held against; null where there is no plan yet, and then
 * any rise towards its limit is named.
 */
export function groundAdvice(
  ground: Ground,
  kit: Kit,
  stages: readonly StageStatics[],
  minutesToOpen: number | null,
): GroundAdvice[] {
  return [
    ...(['near', 'far'] as const).flatMap((bank) => bankAdvice(ground, kit, bank)),
    ...lineAdvice(ground, kit),
    ...launchAdvice(ground, kit, stages),
    ...waterAdvice(ground, minutesToOpen),
  ];
}

function bankAdvice(ground: Ground, kit: Kit, name: 'near' | 'far'): GroundAdvice[] {
  const bank = ground[name];
  const found: GroundAdvice[] = [];
  const add = (code: GroundAdvice['code'], sentence: string) =>
    found.push({ code, bank: name, sentence });
  const rule = setbackRule(bank, kit);
  if (rule !== null && bank.setback < rule - 1e-6) {
    add(
      'setback',
      `The ${name} bearing stands ${metres(bank.setback)} back and the kit's rule for this bank is ${metres(rule)}: set it back, and measure the gap with that.`,
    );
  }
  const { crossFall, approachSlope } = kit.limits ?? {};
  if (crossFall !== undefined && (bank.crossFall ?? 0) > crossFall) {
    add(
      'cross-fall',
      `The ${name} bank falls ${ratio(bank.crossFall ?? 0)} from side to side and the kit levels out ${ratio(crossFall)}: dig or pack it level first.`,
    );
  }
  if (approachSlope !== undefined && (bank.approach?.slope ?? 0) > approachSlope) {
    add(
      'approach',
      `The ${name} approach slopes ${ratio(bank.approach?.slope ?? 0)} and the kit allows ${ratio(approachSlope)}: cut or fill it.`,
    );
  }
  if (bank.soil === 'soft') {
    add(
      'soft-bank',
      `The ${name} bank is soft: lay matting to the rollers and under them before anything heavy comes.`,
    );
  }
  return found;
}

function lineAdvice(ground: Ground, kit: Kit): GroundAdvice[] {
  const { rollerFall, wind } = kit.limits ?? {};
  const found: GroundAdvice[] = [];
  if (rollerFall !== undefined && Math.abs(ground.rollerFall ?? 0) > rollerFall) {
    found.push({
      code: 'roller-fall',
      bank: null,
      sentence: `The roller line falls ${ratio(Math.abs(ground.rollerFall ?? 0))} and the kit allows ${ratio(rollerFall)}: pack or dig the rollers nearer to level.`,
    });
  }
  if (wind !== undefined && (ground.wind ?? 0) > wind) {
    found.push({
      code: 'wind',
      bank: null,
      sentence: `The wind is ${ground.wind} m/s and the kit is moved in ${wind} m/s at most: no move until it drops.`,
    });
  }
  return found;
}

function launchAdvice(ground: Ground, kit: Kit, stages: readonly StageStatics[]): GroundAdvice[] {
  const found: GroundAdvice[] = [];
  for (const { bank, widen, area, newtons } of footings(stages, kit, ground)) {
    if (widen && area !== null) {
      found.push({
        code: 'footing',
        bank,
        sentence: `The ${bank} rollers press with ${(newtons / 1000).toFixed(0)} kN and the ground there bears ${ground[bank].strength} kPa: spread them over ${area.toFixed(1)} square metres.`,
      });
    }
  }
  const runs = Math.max(0, ...stages.map(({ push }) => push?.holdBack ?? 0));
  if (runs > 0) {
    found.push({
      code: 'hold-back',
      bank: 'near',
      sentence: `The bridge would run away down the rollers with ${(runs / 1000).toFixed(1)} kN: anchor a holdback line that takes it before the first move.`,
    });
  }
  return [...found, ...landingHeight(ground, kit, stages)];
}

/** A tip that hangs lower than the landing rollers stand has to be lifted onto them. */
function landingHeight(ground: Ground, kit: Kit, stages: readonly StageStatics[]): GroundAdvice[] {
  const meets = stages.find(({ lands }) => lands)?.meets;
  const [near, far] = [ground.near.height, ground.far.height];
  if (meets === undefined || meets === null || near === null || far === null) {
    return [];
  }
  // Both heights are down to the same water: the higher bank is the one with more of it.
  const rollers = far - near + (kit.launch?.rollers.step ?? 0);
  const lift = rollers - meets;
  if (lift <= 0) {
    return [];
  }
  const sentence = `The tip comes ${metres(lift)} below the landing rollers: set them lower, raise the front rollers, or turn up the nose by so much.`;
  return [{ code: 'landing-height', bank: 'far', sentence }];
}

function waterAdvice(ground: Ground, minutesToOpen: number | null): GroundAdvice[] {
  const time = waterTime(ground);
  if (time?.minutes === null || time === null || time.minutes > (minutesToOpen ?? time.minutes)) {
    return [];
  }
  const sentence =
    time.minutes === 0
      ? 'The water stands at its limit: the work has to stop.'
      : `The water reaches its limit in ${(time.minutes / 60).toFixed(1)} h: be done over it by then, or agree now what stops.`;
  return [{ code: 'water', bank: null, sentence }];
}

/** A fall as the trade says it: 1 in so many. */
function ratio(fall: number): string {
  return fall === 0 ? 'level' : `1 in ${(1 / fall).toFixed(0)}`;
}
