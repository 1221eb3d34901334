/** What became of a report or a question, and what is wrong with what was written. */
export const saidWords = {
  said: {
    sending: 'Sending',
    waiting: 'No link: not sent yet, trying again. It keeps the time it happened.',
    fetching: 'Fetching',
    recorded: (entry: number) => `In the record, number ${entry}.`,
    breach: (sentence: string) => `Breach: ${sentence}`,
    refused: (sentence: string) => `Refused. ${sentence}`,
    noAnswer:
      'No answer. It may have arrived all the same: look at the board before you ask again.',
    noFetch: 'No answer from the command post yet. Trying again by itself.',
    oldFetch: (ago: string) =>
      `No answer from the command post: what stands here was fetched ${ago} ago.`,
    unreachable: 'No answer from the command post. Nothing was changed here; try again.',
  },
  fault: {
    row: (row: number) => `row ${row}`,
    column: (column: string) => `column ${column}`,
    found: (found: string) => `has “${found}”;`,
    expected: (expected: string) => `expected: ${expected}.`,
    all: (count: number) =>
      count === 1
        ? 'One thing is wrong; nothing was read.'
        : `${count} things are wrong; nothing was read.`,
  },
  record: {
    withdrawn: 'withdrawn',
    by: (who: string) => `by ${who}`,
    saidBy: (who: string, entered: string) => `said by ${who}, entered by ${entered}`,
  },
  time: {
    how: 'Like 17:00 or 251700.',
    means: (group: string) => `That is ${group}.`,
    wrong: 'No such time: write it like 17:00, 251700 or 251700Z NOV 26.',
  },
  copy: {
    short: 'Copy',
    button: (what: string) => `Copy: ${what}`,
    copied: 'Copied.',
    marked: 'Marked: press Ctrl and C to copy it.',
  },
  newLinks: {
    title: 'New links',
    one: 'New link',
    more: 'Each opens one page for one person. The address holds its secret and is shown this once: hand it out now, or make a new one later.',
    open: 'Open',
    address: (name: string) => `Address for ${name}`,
  },
  status: {
    'to-come': 'to come',
    'at-work': 'at work',
    stopped: 'stopped',
    done: 'done',
  },
  hold: {
    none: 'no hold',
    open: 'not passed yet',
    passed: 'passed',
    failed: 'failed',
    lapsed: 'lapsed',
  },
} as const;
