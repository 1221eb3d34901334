import type { words } from '../../words/words.ts';

/** A part of the leader's page with an address of its own. */
export type Section = keyof typeof words.leader.sections;

type Group = keyof typeof words.leader.groups;

/** The leader's pages in the order of the leader's work; "now" comes before them all and stands alone. */
export const sectionGroups: Readonly<Record<Group, readonly Section[]>> = {
  site: ['ground', 'launch', 'stores', 'kit'],
  plan: ['work', 'crews', 'hours', 'plan', 'forecast'],
  others: ['links', 'report'],
  past: ['record', 'after'],
};
