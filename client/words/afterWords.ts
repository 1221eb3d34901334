/** Words of the page after a build: planned against actual, and what the kit may learn from it. */
export const afterWords = {
  after: {
    title: 'After the build',
    more: 'Planned against actual, and minutes for the kit',
    notOpen:
      'The bridge is not open yet. So far finished, against the plan; minutes for the kit are proposed once it is open.',
    opened: (time: string) => `Open since ${time}.`,
    none: 'Nothing has been finished with its start told: there is nothing to compare yet.',
    totals: {
      title: 'Planned and as it went',
      line: (tasks: number, planned: string, actual: string, pace: string) =>
        `${tasks} tasks with both start and finish told: ${planned} planned, ${actual} taken, ${pace}.`,
      same: 'as planned',
    },
    ladder: {
      more: 'One crew beside the other; tasks in the order done, to one scale of minutes. Dashed: as planned. Solid: as it went. The lines between lean down where the crew fell behind, up where it gained. Minutes at work only: waiting is left out.',
      crew: 'Crew',
      planned: 'planned',
      actual: 'as it went',
      head: (planned: string, actual: string) => `${planned} planned, ${actual} taken`,
      pace: (plain: string) => `${plain}`,
      box: (name: string, planned: string, actual: string) =>
        `${name}: ${planned} planned, ${actual} taken`,
      usual: (minutes: string) =>
        `With the usual people, by day and without bad conditions that is ${minutes}.`,
      batch: 'Told in a batch with others: it counts for little.',
      touch: 'Touch a task for its figures.',
      close: 'Close',
      region: 'Planned against actual, crew by crew',
    },
    most: {
      title: 'Furthest from the plan',
      line: (name: string, actual: string, planned: string) =>
        `${name}: ${actual} in place of ${planned}`,
      none: 'No task was two minutes or more off.',
    },
    proposals: {
      title: 'Minutes for the kit',
      more: 'What this build and earlier ones of the same kit say of its quick, likely and slow. Shrunk towards the kit’s own values: one build moves them a quarter of the way.',
      later: 'Proposed once the bridge is open.',
      noKit: 'This build came from tables: there is no kit to improve.',
      none: 'Nothing to change: the kit’s minutes fit.',
      rests: (builds: number, tasks: number) =>
        `rests on ${builds === 1 ? '1 build' : `${builds} builds`}, ${tasks === 1 ? '1 task' : `${tasks} tasks`}`,
      earlier: (count: number) =>
        count === 0
          ? 'There is no earlier build of this kit here: it rests on this one alone.'
          : count === 1
            ? 'One earlier build of this kit counts too.'
            : `${count} earlier builds of this kit count too.`,
      values: (quick: string, likely: string, slow: string) => `${quick} / ${likely} / ${slow} min`,
      change: (was: string, is: string) => `${was} becomes ${is}`,
      key: 'Quick to slow with a stroke at likely, in minutes from 0. Dashed: the kit. Solid: proposed.',
      all: 'Take all',
      nothing: 'Take none',
      taken: (count: number, of: number) => `${count} of ${of} taken.`,
      name: 'Name of your own kit',
      nameHint: 'Small letters, digits and hyphens. The kit itself stays as it is.',
      nameFault: 'Small letters, digits and hyphens, 40 at most, beginning with a letter or digit.',
      accept: 'Make your own copy with these minutes',
      making: 'Making the copy',
      made: (title: string) =>
        `“${title}” is kept here. Choose it as the kit when the next build is opened.`,
      pick: 'Take at least one.',
    },
    exports: {
      title: 'Take it along',
      tasks: 'Tasks (CSV)',
      crews: 'Crews (CSV)',
      proposals: 'Minutes proposed (CSV)',
      whole: 'All of it (JSON)',
      file: (build: string, what: string) => `${build}-${what}`,
    },
  },
} as const;
