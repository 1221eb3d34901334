import { describe, expect, it } from 'vitest';
import { sectionGroups } from '#client/screens/leader/sectionGroups.ts';
import { words } from '#client/words/words.ts';

describe('the way about on the leader’s page', () => {
  it('leads to every page once, and to the first one before all groups', () => {
    const linked = ['now', ...Object.values(sectionGroups).flat()];
    expect(linked.toSorted()).toEqual(Object.keys(words.leader.sections).toSorted());
  });

  it('stays in few groups, each short enough to be taken in at a look', () => {
    const groups = Object.values(sectionGroups);
    expect(groups.length).toBeLessThanOrEqual(4);
    for (const group of groups) expect(group.length).toBeLessThanOrEqual(5);
  });
});
