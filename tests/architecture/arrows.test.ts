import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { folderOf, importsOf, root, sourcesOf } from './sources.ts';

const mayImport: Record<string, readonly string[]> = {
  domain: ['domain'],
  shared: ['shared', 'domain'],
  server: ['server', 'shared', 'domain'],
  client: ['client', 'shared', 'domain'],
};

const domainPackages =
  /^(typebox(\/.*)?|@dagrejs\/graphlib|pure-rand\/.+|suncalc|date-fns(\/.*)?|@date-fns\/(tz|utc)(\/.*)?)$/;

const packagesOf: Record<string, RegExp> = {
  domain: domainPackages,
  shared: /^typebox(\/.*)?$/,
};

describe('arrows between the folders run one way', () => {
  for (const [folder, allowed] of Object.entries(mayImport)) {
    const sources = sourcesOf(folder);

    it(`${folder} has sources to look at`, () => {
      expect(sources.length).toBeGreaterThan(folder === 'shared' ? 1 : 10);
    });

    it(`${folder} imports only ${allowed.join(', ')}`, () => {
      const wrong = sources.flatMap((source) =>
        importsOf(source)
          .map((imported) => ({ imported, to: folderOf(source, imported) }))
          .filter(({ to }) => to !== null && !allowed.includes(to) && to !== 'package.json')
          .map(({ imported }) => `${source.path} imports ${imported}`),
      );
      expect(wrong).toEqual([]);
    });
  }

  for (const [folder, packages] of Object.entries(packagesOf)) {
    it(`${folder} imports no other package`, () => {
      const wrong = sourcesOf(folder).flatMap((source) =>
        importsOf(source)
          .filter((imported) => folderOf(source, imported) === null && !packages.test(imported))
          .map((imported) => `${source.path} imports ${imported}`),
      );
      expect(wrong).toEqual([]);
    });
  }
});

describe('domain is pure', () => {
  const impure =
    /\b(Date\.now\(|new Date\(\)|Math\.random\(|performance\.now\(|setTimeout\(|setInterval\(|process\.|globalThis\.|fetch\(|crypto\.|console\.)/;

  it('asks no clock, no chance and no world', () => {
    const wrong = sourcesOf('domain')
      .filter((source) => impure.test(source.text.replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')))
      .map((source) => source.path);
    expect(wrong).toEqual([]);
  });
});

describe('the top level', () => {
  it('holds the folders of the house and no others', () => {
    const folders = readdirSync(root, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map((entry) => entry.name)
      .filter(
        (name) => !['node_modules', 'dist', 'data', 'coverage', 'screenshots'].includes(name),
      );
    expect(folders.sort()).toEqual(['client', 'domain', 'server', 'shared', 'tests']);
  });
});
