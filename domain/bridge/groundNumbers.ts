/** One number of a ground: what it may be, in which unit, and why anybody asks for it. */
export type GroundNumber = {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** May be null, or left out where the file need not name it: unknown stays marked unknown. */
  readonly unknown: boolean;
  readonly reason: string;
};

/** Every number that is measured at a site. The schema of the ground takes its ranges from here, and so do the pages. */
export const groundNumbers = {
  gap: {
    unit: 'm',
    least: 1,
    most: 200,
    unknown: false,
    reason: 'Between the bank edges on the centre line: the length follows from it.',
  },
  loadClass: {
    unit: 'class',
    least: 1,
    most: 150,
    unknown: false,
    reason: 'The heaviest traffic asked for: a longer bridge carries less.',
  },
  setback: {
    unit: 'm',
    least: 0,
    most: 20,
    unknown: false,
    reason:
      'How far the bearing stands back from the edge, so that the bank does not break under it.',
  },
  height: {
    unit: 'm',
    least: 0,
    most: 60,
    unknown: true,
    reason:
      'From the top of the bank down to the water or bed: a high natural bank wants more setback, and the tip lands by the difference.',
  },
  slope: {
    unit: 'degrees',
    least: 1,
    most: 90,
    unknown: true,
    reason:
      'Slope of the bank face from the level: a flat face brings the toe forward of the edge and lets the bearing stand nearer.',
  },
  strength: {
    unit: 'kPa',
    least: 10,
    most: 5000,
    unknown: true,
    reason: 'What the ground bears: the footings of rollers, jacks and bearings follow from it.',
  },
  crossFall: {
    unit: 'm/m',
    least: 0,
    most: 0.5,
    unknown: true,
    reason: 'Fall from side to side where the rollers and bearings stand: it is packed level.',
  },
  approachLength: {
    unit: 'm',
    least: 0,
    most: 500,
    unknown: true,
    reason: 'Way to be made from the road to the bridge.',
  },
  approachSlope: {
    unit: 'm/m',
    least: 0,
    most: 0.5,
    unknown: true,
    reason: 'Slope of that way: heavy vehicles do not climb onto a bridge from a steep one.',
  },
  roomBehind: {
    unit: 'm',
    least: 0,
    most: 500,
    unknown: true,
    reason:
      'Firm level ground behind the front rollers: the bridge is built there before it moves.',
  },
  rollerFall: {
    unit: 'm/m',
    least: -0.2,
    most: 0.2,
    unknown: true,
    reason:
      'Fall of the roller line towards the gap; less than 0 rises. It adds to the push, or makes the bridge run away.',
  },
  depth: {
    unit: 'm',
    least: 0,
    most: 60,
    unknown: true,
    reason: 'Depth of the water: who falls in, and whether a boat floats.',
  },
  rise: {
    unit: 'm/h',
    least: -5,
    most: 5,
    unknown: true,
    reason: 'How fast the water comes up: with its level and limit, the time that is left.',
  },
  level: {
    unit: 'm',
    least: -100,
    most: 100,
    unknown: true,
    reason: 'Water now, on any gauge.',
  },
  limit: {
    unit: 'm',
    least: -100,
    most: 100,
    unknown: true,
    reason: 'Level on the same gauge at which the work has to stop.',
  },
  wind: {
    unit: 'm/s',
    least: 0,
    most: 60,
    unknown: true,
    reason: 'Wind at the site: no bridge is moved in more than the kit allows.',
  },
  latitude: {
    unit: 'degrees',
    least: -90,
    most: 90,
    unknown: true,
    reason: 'Where the site is: sunrise and dusk follow from it.',
  },
  longitude: {
    unit: 'degrees',
    least: -180,
    most: 180,
    unknown: true,
    reason: 'Where the site is: sunrise and dusk follow from it.',
  },
} as const satisfies Record<string, GroundNumber>;
