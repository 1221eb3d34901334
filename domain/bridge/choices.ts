import type { Kit } from '../kit/kit.ts';
import { criticalPath } from '../schedule/criticalPath.ts';
import { quickestWork } from '../schedule/quickestWork.ts';
import { orderOfWork } from '../tasks/fromKit/orderOfWork.ts';
import type { Bridge } from './bridge.ts';
import { designBridge } from './design.ts';
import type { Ground } from './ground.ts';
import { baysNeeded } from './reach.ts';

/** A bridge of the kit that reaches, carries and can be launched. Metres, minutes and tonnes. */
export type Choice = {
  readonly bridge: Bridge;
  /** Load class over what is asked. */
  readonly classMargin: number;
  /** Room left over behind the near bank; null where it is not measured. */
  readonly roomOver: number | null;
  /** Moves until it rests on its bearings. */
  readonly moves: number;
  /** People of the kit's own crews, and all on site. */
  readonly people: number;
  readonly onSite: number;
  readonly tasks: number;
  readonly loads: number;
  readonly tonnes: number;
  /** Longest chain of its order of work by expected minutes, with the most people each task can use: no crews open it sooner on average. */
  readonly leastMinutes: number;
  /** Why it is not the one advised; null for that one. */
  readonly against: string | null;
};

/** A length or nose that cannot be, with each limit that binds. */
export type RuledOut = {
  readonly bays: number;
  /** Null: with any nose. */
  readonly nose: number | null;
  readonly limits: readonly string[];
};

export type Choices = {
  /** The advised one first: the fastest, and of two alike the shorter with the shorter nose. */
  readonly fitting: readonly Choice[];
  readonly ruledOut: readonly RuledOut[];
};

/**
 * Every bridge of the kit over that ground, by bays and nose, compared; and what rules the others out. Lengths start
 * at the shortest that reaches. Which is fastest is judged by the order of work alone: plans with real crews are made
 * of those in question.
 */
export function choices(ground: Ground, kit: Kit, kitHash: string): Choices {
  const fitting: Omit<Choice, 'against'>[] = [];
  const ruledOut: RuledOut[] = [];
  const needed = baysNeeded(ground, kit);
  for (let bays = needed; bays <= Math.max(needed, kit.bay.most); bays += 1) {
    const shortest = designBridge(ground, kit, kitHash, { bays });
    if (!shortest.ok) {
      const limits = shortest.reason.map(({ sentence }) => sentence);
      ruledOut.push({ bays, nose: null, limits });
      continue;
    }
    fitting.push(compared(shortest.value, ground, kit));
    const most = kit.nose?.most ?? 0;
    for (let nose = shortest.value.nose + 1; nose <= most; nose += 1) {
      const longer = designBridge(ground, kit, kitHash, { bays, nose });
      if (!longer.ok) {
        ruledOut.push({ bays, nose, limits: longer.reason.map(({ sentence }) => sentence) });
      } else if (moves(longer.value) < moves(fitting.at(-1)?.bridge ?? longer.value)) {
        fitting.push(compared(longer.value, ground, kit));
      } else {
        const limits = [
          'A longer nose than the balance wants makes no fewer moves, and is more to build and take off.',
        ];
        ruledOut.push({ bays, nose, limits });
      }
    }
  }
  return { fitting: withReasons(fitting), ruledOut };
}

function moves({ stages }: Bridge): number {
  return stages.length;
}

function compared(bridge: Bridge, ground: Ground, kit: Kit): Omit<Choice, 'against'> {
  const ordered = orderOfWork(bridge, kit);
  const work = ordered.ok
    ? ordered.value
    : { tasks: [], links: [], crews: [], zones: [], loads: [] };
  const path = criticalPath(quickestWork(work), 'pert');
  const people = (attached: boolean) =>
    work.crews
      .filter((crew) => !crew.attached || attached)
      .reduce((sum, crew) => sum + crew.people, 0);
  return {
    bridge,
    classMargin: bridge.loadClass - ground.loadClass,
    roomOver: ground.roomBehind === null ? null : ground.roomBehind - bridge.roomNeeded,
    moves: moves(bridge),
    people: people(false),
    onSite: people(true),
    tasks: work.tasks.length,
    loads: work.loads.length,
    tonnes: work.loads.reduce((sum, { tonnes = 0 }) => sum + tonnes, 0),
    leastMinutes: path.ok ? path.value.minutes : Number.POSITIVE_INFINITY,
  };
}

function withReasons(fitting: readonly Omit<Choice, 'against'>[]): Choice[] {
  const sorted = fitting.toSorted(
    (a, b) =>
      a.leastMinutes - b.leastMinutes ||
      a.bridge.bays - b.bridge.bays ||
      a.bridge.nose - b.bridge.nose,
  );
  const best = sorted[0];
  return sorted.map((one) => ({
    ...one,
    against: one === best || !best ? null : against(one, best),
  }));
}

function against(one: Omit<Choice, 'against'>, best: Omit<Choice, 'against'>): string {
  const later = one.leastMinutes - best.leastMinutes;
  const tonnes = one.tonnes - best.tonnes;
  const slower = later > 0.05 ? `${later.toFixed(0)} min more at the least` : 'no faster';
  return tonnes > 0.05 ? `${slower}, and ${tonnes.toFixed(1)} t more to bring` : slower;
}
