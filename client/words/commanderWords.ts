/** Words of the commander's page. */
export const commanderWords = {
  commander: {
    line: (parts: readonly string[]) => parts.join(' · '),
    bridge: (length: string, loadClass: number) => `${length} bridge, class ${loadClass}`,
    changed: {
      later: (by: string, at: string) => `${by} later than was said at ${at}.`,
      earlier: (by: string, at: string) => `${by} earlier than was said at ${at}.`,
      same: (at: string) => `The same as was said at ${at}.`,
    },
    noForecast: 'No forecast yet.',
    holds: {
      title: 'What holds the opening',
      titleOpen: 'Since it opened',
      nothing: 'Nothing is told to hold it.',
      nothingOpen: 'Traffic may cross. Nothing is told to be wrong.',
      chain: (task: string) => `On the chain that sets the opening: ${task}.`,
    },
    points: {
      title: 'Hold points',
      none: 'This order of work has no hold points.',
      before: (count: number) => (count === 1 ? '1 passed before' : `${count} passed before`),
      next: 'next',
      ownWork: 'builder and inspector are one person',
      concession: (name: string, authority: string) => `by concession of ${name}, ${authority}`,
      more: (count: number) => `and ${count} more to come`,
    },
    work: {
      bays: (done: number, of: number) => `${done} of ${of} bays`,
      moved: (moved: string, of: string) => `${moved} of ${of} moved`,
      tasks: (done: number, of: number) => `${done} of ${of} tasks done`,
      share: (percent: string) => `${percent} of the person-minutes done`,
      strength: (fit: number, planned: number) => `${fit} of ${planned} people fit`,
      hurt: (count: number) => (count === 1 ? '1 hurt' : `${count} hurt`),
    },
    events: {
      title: 'Safety',
      none: 'No injury, near miss or breach told.',
      more: (count: number) => `${count} earlier in the record.`,
      lifted: 'Lifted since.',
    },
    loadClass: {
      title: (loadClass: number) => `Class ${loadClass}`,
      rule: 'One vehicle at a time, whose own class sign shows no more than that.',
      asGuide: (vehicles: string) => `As a guide: ${vehicles}.`,
      vehicles: {
        foot: 'people on foot and light cars',
        light: 'cars, vans and light lorries without a load',
        lorry: 'ambulances, vans and light lorries with a load',
        loaded: 'loaded lorries and wheeled armoured carriers; no tanks',
        heavy: 'heavy lorries and tracked armoured carriers; no battle tanks',
        tank: 'battle tanks',
        transporter: 'battle tanks on their transporters',
      },
    },
    halt: (acknowledged: number, crews: number, people: number) =>
      `${acknowledged} of ${crews} crews have loads down and stand clear, ${people} people counted.`,
  },
} as const;
