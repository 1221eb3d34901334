/** Words of a crew's jobs, on every page that shows them. */
export const jobWords = {
  job: {
    fit: (fit: number, of: number) => `${fit} of ${of} fit`,
    since: (time: string, span: string) => `since ${time}, ${span}`,
    usually: (span: string) => `usually ${span}`,
    stopped: (why: string) => `stopped${why === '' ? '' : `: ${why}`}`,
    ready: 'can start',
    waits: (what: string) => `waits: ${what}`,
    hold: 'hold point, the inspector’s',
    none: 'nothing more by plan',
  },
} as const;
