/** Words of the frame round every page: titles, links, the state of the line, themes. */
export const shellWords = {
  program: 'Spanwright',
  planningAid:
    'Planning aid. The manual of the equipment on site, local codes and the qualified person in charge decide.',
  notForUse: 'Demo kit, invented: not for use on any real site.',
  demoKits: 'A kit marked as demo is invented: not for use on any real site.',
  pages: {
    leader: 'Leader',
    log: 'Log',
    chief: 'Crew card',
    inspector: 'Hold points',
    commander: 'Commander',
  },
  title: (page: string, build: string) => `${page}, ${build}`,
  skip: 'Skip to the page',
  allTimes: (zone: string) => `all times ${zone}`,
  theme: {
    day: 'Day',
    night: 'Night',
    toNight: 'Change to night colours',
    toDay: 'Change to day colours',
  },
  line: {
    heard: (ago: string) => `last heard ${ago} ago`,
    lost: (ago: string) => `No link. Last heard ${ago} ago: what stands here may be old.`,
    never: 'No link yet.',
  },
  meanwhile: {
    connecting: 'Fetching the build',
    connectingMore: 'This takes a moment on a weak link.',
    lost: 'No link to the command post',
    lostMore:
      'Trying again by itself. Until it comes, work by radio: say task number, crew and what is done.',
    refused: 'This link does not open the build',
    refusedMore: 'Ask the leader for a new link.',
    noSecret: 'This address lacks its secret',
    noSecretMore:
      'A link ends in # and a row of letters and digits. Open it again from where you got it, or ask the leader for a new one.',
  },
  otherRole: {
    title: 'This link is for another page',
    more: (page: string) => `It opens the page “${page}”.`,
    go: (page: string) => `Go to “${page}”`,
  },
  unknownPage: {
    title: 'No such page',
    more: 'Open the link you were given, with everything after the #.',
    home: 'To the start page',
  },
  sending: {
    noAnswer: 'no answer: look at the board before you ask again',
    unsent: (count: number) =>
      count === 1 ? '1 report not sent, trying again' : `${count} reports not sent, trying again`,
  },
  close: 'Close',
  back: 'Back',
  cancel: 'Leave it',
  broken: {
    title: 'This page broke',
    more: 'What was told is in the record. Load the page again; if it breaks again, work by radio and tell the leader.',
    reload: 'Load again',
  },
  start: {
    title: 'Spanwright',
    what: 'Plans and runs the hand-built bridging of a gap: which bridge reaches and carries, in what order it is built, who stands where, and when traffic may cross, with honest doubt.',
    how: 'How to get in',
    howMore: [
      'Each person gets a link for one role at one build: leader, log keeper, crew chief, inspector or commander. The leader hands them out.',
      'Open your link as it is. It ends in # and a secret; without that part nothing opens.',
      'Whoever runs the program has a host link, printed when it starts. With it, this page lists the builds and starts new ones.',
    ],
    builds: 'Builds here',
    none: 'No build yet. Start one, or look at the demo first.',
    loading: 'Fetching the list',
    unreachable: 'The program does not answer.',
    again: 'Try again',
    starts: (when: string) => `starts ${when}`,
    entries: (count: number) => (count === 1 ? '1 entry' : `${count} entries`),
    leaderLink: 'Make a leader’s link',
    demo: 'Demo',
    demoHalfBuilt: 'Start the demo half built',
    demoFresh: 'Start a fresh demo',
    demoMore:
      'Larch Ford: everything in it is invented. A demo is a build of its own, runs from now and changes nothing else.',
    demoRunning: 'Setting up the demo',
  },
} as const;
