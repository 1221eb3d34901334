/** Words of the page that checks a kit file. */
export const kitWords = {
  kitFile: {
    title: 'Check a kit file',
    lead: 'The same check as the command “spanwright kit check”. Nothing leaves this device and nothing is kept.',
    text: 'Kit file (JSON)',
    hint: 'Paste it here, or choose the file below.',
    file: 'Choose a kit file',
    notJson: (why: string) => `This is no JSON: ${why}. Mend the place that it names.`,
    faults: (count: number) =>
      count === 1
        ? 'One fault. Mend it at its path, then check again.'
        : `${count} faults. Mend each at its path, then check again.`,
    good: (title: string) => `No faults: ${title}`,
    source: (source: string) => `Source: ${source}`,
    notForUse: 'Not for use: its file says so.',
    bays: (manner: string, least: string, most: string) => `${manner}, ${least} to ${most}`,
    length: (bays: number, metres: string) => `${bays} bays (${metres})`,
    notes: 'To think about',
    sample: (bays: number, length: string, gap: string) =>
      `A sample bridge: ${bays} bays, ${length}, over a gap of ${gap}`,
    noSample: 'No bridge of this kit could be drawn over any gap between made banks.',
    parts: 'Its parts, at one scale, from above',
    partLine: (name: string, size: string, mass: string, count: number, per: string) =>
      `${name}: ${size}${mass}, ${count} for each ${per}`,
  },
} as const;
