import { people } from './units.ts';

/** Words of the stores page: trucks, tailgate, stacks, carrying, packing, and who is near what moves. */
export const storesWords = {
  stores: {
    title: 'Stores',
    print: 'Print',
    loading: 'Working the stores out.',
    noLoads: 'This order of work has no loads.',
    noKit:
      'There is no bridge, or its kit is not here as it was: only when the loads are wanted can be said.',
    all: (mass: string, trucks: number) =>
      trucks === 1 ? `${mass} of stores on 1 truck` : `${mass} of stores on ${trucks} trucks`,
    toCome: (count: number) =>
      count === 0
        ? 'All of it is here.'
        : count === 1
          ? '1 still to come.'
          : `${count} still to come.`,
    trucks: 'When each truck is wanted',
    drawn: (draws: number) =>
      `“Wanted” and “at the latest” are from ${draws} draws of the forecast: eight in ten lie between the first time and the last, half before the one said to be even. When it opens with a later truck is by the plan; how much later that makes it is the average over the draws.`,
    truck: 'Truck',
    mass: 'Mass',
    expected: 'Comes',
    here: (time: string) => `here ${time}`,
    late: (time: string, minutes: string) => `${time}, ${minutes} late`,
    wanted: 'Wanted from',
    wantedFor: (task: string) => `for ${task}`,
    latest: 'At the latest',
    between: (from: string, even: string, to: string) => `${from} to ${to}, even chance ${even}`,
    byPlan: (time: string) => `by plan ${time}`,
    ifLate: 'If it is later still',
    lateOpens: (by: string, opens: string, more: string) => `${by}: ${more} (${opens} by plan)`,
    onAverage: (minutes: string) => `opens ${minutes} later on average`,
    noLater: 'opens no later on average',
    nothing: 'nothing waits for it',
    tailgate: 'Count at the tailgate',
    tailgateMore: 'Count down what is not on the truck. What is not counted is taken to be there.',
    choose: 'Which truck',
    fewer: (part: string) => `One ${part} fewer`,
    more: (part: string) => `One ${part} more`,
    of: (count: number, all: number) => `${count} of ${all}`,
    whole: 'All of it is on the truck.',
    short: (missing: number, part: string) => `${missing} ${part} short`,
    stops: (task: string) => `stops ${task} first`,
    stopsNone: 'no task says that it uses them',
    tellIn: 'Truck is here',
    tellShort: 'Truck is here, tell what is short',
    wrong: 'It is the wrong load',
    wrongTitle: 'Without this load these can still start or go on',
    wrongNone: 'Without this load nothing more can be done.',
    wrongMore: (count: number) => `and ${count} more`,
    stacks: 'Stacks beside the bridge',
    stacksAlt: 'Stacks on both sides behind the front rollers, to scale, seen from above.',
    stacksMore: (walk: string) =>
      `What is needed first lies nearest to the front rollers. A part is carried ${walk} on the way, on average by mass.`,
    circuit: (metres: string, round: string, teams: number) =>
      `Deck goes out on one side and people come back on the other: ${metres} and ${round} once round. ${teams === 1 ? 'One team keeps' : `${teams} teams keep`} the place of laying busy.`,
    rollers: 'front rollers',
    gap: 'gap',
    left: 'left',
    right: 'right',
    carrying: 'Parts and carrying',
    part: 'Part',
    count: 'Count',
    carriers: 'Carried by',
    carriersOf: (count: number, share: string) => `${people(count)}, ${share} each`,
    each: 'One takes',
    allOf: 'All, one team',
    warning: 'Team lift',
    packing: 'Packed in the order needed, by mass and bed',
    packedTruck: (row: number) => `Truck ${row}`,
    packedOf: (mass: string, share: string, bed: string) =>
      `${mass}, ${share} of its mass, ${bed} of its bed`,
    pallets: 'Pallets',
    tooBig: (parts: string) => `No truck takes: ${parts}.`,
    near: 'Near moving loads',
    nearMore:
      'By the plan: time of all people in each zone, and how much of it while something moves there.',
    zone: 'Zone',
    inAll: 'In all',
    moving: 'While something moves',
    most: 'Most at once',
    rescue: 'Rescue over water',
    rescueOf: (buoys: number, apart: string, line: string) =>
      `${buoys} ring buoys, none further than ${apart} from the next, each with at least ${line} of line, and a boat at once available (29 CFR 1926.106).`,
  },
} as const;
