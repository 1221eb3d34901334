import { describe, expect, it } from 'vitest';
import { liftNotes } from '#domain/kit/teamLift.ts';
import { heron } from './heronKit.ts';

describe('what a team should lift', () => {
  it('has nothing to say of the demo kit', () => {
    expect(liftNotes(heron)).toEqual([]);
  });

  it('names each part that is too heavy for its carriers, and none lifted by machine', () => {
    const parts = heron.parts.map((part) => {
      if (part.id === 'girder-panel') return { ...part, mass: 262 };
      return part.id === 'site-gear' ? { ...part, mass: 5000 } : part;
    });
    const notes = liftNotes({ ...heron, parts });
    expect(notes).toHaveLength(1);
    expect(notes[0]).toContain('Girder panel: 262 kg by 6 people');
  });
});
