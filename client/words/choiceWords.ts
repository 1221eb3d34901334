/** Words of the choice between the bridges that a kit could lay over a ground. */
export const choiceWords = {
  choice: {
    title: 'Which bridge',
    lead: 'Every bridge of the kit that reaches, carries and can be launched here, as its tip lands, all at one scale.',
    noneFits: 'No bridge of this kit fits here',
    working: 'Planning and forecasting each of them',
    stop: 'Stop',
    stopped: 'Stopped: the times are not worked out.',
    failed:
      'The server could not be asked when each would open. The least time of work stands instead.',
    again: 'Work out the times',
    daylight:
      'Counted from the start of the work, with the kit’s crews, the usual doubt and the daylight of the place.',
    noDaylight:
      'Counted from the start of the work, with the kit’s crews and the usual doubt, as if by day: place or start are not known. In the dark it takes longer.',
    name: (bays: number, nose: number) =>
      nose === 0
        ? `${bays} bays, no nose`
        : `${bays} bays, ${nose === 1 ? 'one nose section' : `${nose} nose sections`}`,
    wanted: 'Wanted',
    only: 'The only one that fits.',
    fastest: 'The fastest that fits.',
    fastestBy: (other: string, minutes: string) => `The next, ${other}, takes ${minutes} more.`,
    alike: (other: string) => `No slower than the next, ${other}, and less to bring and build.`,
    slower: (minutes: string) => `Ruled out: ${minutes} later at eight in ten`,
    noTimesYet: (against: string) => `Ruled out by its order of work: ${against}`,
    noFaster: 'Ruled out: no faster',
    noFasterMore: (tonnes: string) => `, and ${tonnes} more to bring`,
    cannotPlan: 'Ruled out: its work cannot be planned with the kit’s crews',
    opens: 'Opens',
    opensIn: (even: string, eight: string) =>
      `even chance within ${even}, eight in ten within ${eight}`,
    atLeast: (minutes: string) => `not before ${minutes}, by its longest chain`,
    cannot: 'cannot be planned with these crews',
    length: 'Length',
    lengthIs: (length: string, bays: number, nose: string) => `${length} in ${bays} bays${nose}`,
    noseIs: (length: string) => `, nose ${length}`,
    room: 'Room behind',
    roomIs: (needed: string, over: string) => `${needed} needed, ${over} to spare`,
    roomUnknown: (needed: string) => `${needed} needed; what there is was not measured`,
    bearings: 'Bearings',
    bearingsAre: (near: string, far: string) => `${near} near, ${far} far`,
    loadClass: 'Load class',
    loadClassIs: (loadClass: number, over: number) =>
      over === 0 ? `${loadClass}, just what is asked` : `${loadClass}, ${over} over what is asked`,
    people: 'People',
    peopleAre: (own: number, all: number) => `${own} in the crews, ${all} on site`,
    bring: 'To bring',
    bringIs: (loads: number, tonnes: string) =>
      `${loads === 1 ? 'one load' : `${loads} loads`}, ${tonnes}`,
    moves: 'Moves',
    movesAre: (moves: number, tasks: number) => `${moves}, of ${tasks} tasks`,
    take: 'Take this one',
    wantedOther: (name: string) => `A better one fits here: ${name}. Why stands below.`,
    takeWanted: 'Take the better one',
    taken: 'This one is looked at.',
    ruledOut: 'What rules the others out',
    ruledName: (bays: string, nose: string) => `${bays} bays${nose}`,
    ruledNose: (nose: string) => `, nose of ${nose} sections`,
    figure: (name: string) => `${name}, as the tip lands`,
    figureRoom: (needed: string) => `needs ${needed} behind`,
    figureThere: (there: string) => `${there} measured`,
  },
} as const;
