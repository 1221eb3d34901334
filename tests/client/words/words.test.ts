import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { words } from '#client/words/words.ts';

const folder = join(import.meta.dirname, '../../../client/words');

describe('the catalogue of words', () => {
  it('loses no section to another of the same name', async () => {
    const catalogue = readFileSync(join(folder, 'words.ts'), 'utf8');
    const spread = [...catalogue.matchAll(/\.\.\.(\w+),/g)].map(([, name]) => name!);
    const keys: string[] = [];
    for (const file of readdirSync(folder).filter((name) => name.endsWith('Words.ts'))) {
      const name = file.replace('.ts', '');
      if (!spread.includes(name)) continue;
      const section = (await import(`../../../client/words/${name}.ts`)) as Record<string, object>;
      keys.push(...Object.keys(section[name]!));
    }
    expect(spread.length).toBeGreaterThan(3);
    expect(keys.length).toBeGreaterThan(10);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  it('never says “clear” alone of a moving bridge', () => {
    const alone = JSON.stringify(words).match(/:"(all )?clear\.?"/gi);
    expect(alone).toBeNull();
  });

  it('always says who decides', () => {
    expect(words.planningAid).toContain('The manual of the equipment on site');
    expect(words.planningAid).toContain('qualified person in charge');
  });
});
