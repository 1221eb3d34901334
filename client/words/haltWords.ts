/** Words of a halt, on every page. */
export const haltWords = {
  halt: {
    title: 'Halt',
    call: 'Halt everyone',
    again: 'Halt is on',
    sending: 'Calling the halt',
    unheard: 'NOT SENT: nobody else knows yet. Call the halt by voice and radio. Trying again.',
    on: (time: string) => `Halt since ${time}: loads down, everyone off`,
    by: (name: string, why: string) =>
      why === '' ? `Called by ${name}.` : `Called by ${name}: ${why}.`,
    nothingResumes: 'Finishing and stopping can be told. Nothing goes on by itself.',
  },
} as const;
