import { describe, expect, it } from 'vitest';
import { rememberedTheme } from '#client/look/theme.ts';

function storeWith(kept: Record<string, string>) {
  return { read: (key: string) => kept[key] ?? null, write: () => {} };
}

describe('day and night', () => {
  it('begin as the device prefers', () => {
    expect(rememberedTheme(storeWith({}), 'larch.1', true)).toBe('night');
    expect(rememberedTheme(storeWith({}), 'larch.1', false)).toBe('day');
  });

  it('are remembered for each link apart', () => {
    const store = storeWith({ 'spanwright.theme.larch.1': 'night' });
    expect(rememberedTheme(store, 'larch.1', false)).toBe('night');
    expect(rememberedTheme(store, 'larch.2', false)).toBe('day');
  });

  it('pass over what does not belong in the store', () => {
    expect(rememberedTheme(storeWith({ 'spanwright.theme.x': 'noon' }), 'x', true)).toBe('night');
  });
});
