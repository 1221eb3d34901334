import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contrast } from '../support/contrast.ts';

const client = join(import.meta.dirname, '../../../client');
const themes = readFileSync(join(client, 'look/themes.css'), 'utf8');

type Palette = Readonly<Record<string, string>>;

function palette(selector: string): Palette {
  const at = themes.indexOf(`${selector} {`);
  if (at < 0) throw new Error(`no ${selector} in themes.css`);
  const block = themes.slice(at, themes.indexOf('}', at));
  return Object.fromEntries(
    [...block.matchAll(/--([a-z0-9-]+):\s*(#[0-9a-f]{6})/g)].map(([, name, value]) => [
      name,
      value,
    ]),
  );
}

const night = palette(':root');
const day = { ...night, ...palette(':root[data-theme="day"]') };
const print = { ...night, ...palette('  :root[data-theme]') };

/** Every ground a text colour may stand on. Accent stands on paper only. */
const texts = [
  ['ink', ['paper', 'tint', 'ground', 'water']],
  ['ink-2', ['paper', 'tint', 'ground', 'water']],
  ['on-solid', ['solid']],
  ['on-press', ['press']],
] as const;
const accents = [
  ['accent', 'paper'],
  ['on-accent', 'accent'],
] as const;

describe('the contrast formula', () => {
  // Worked cases of checks G1, computed from the WCAG 2.2 definition; the second decimal may be cut or rounded.
  for (const [one, other, ratio] of [
    ['#000000', '#ffffff', 21],
    ['#767676', '#ffffff', 4.54],
    ['#777777', '#ffffff', 4.48],
    ['#949494', '#ffffff', 3.03],
    ['#959595', '#ffffff', 2.99],
    ['#ff0000', '#000000', 5.25],
    ['#ff0000', '#ffffff', 4.0],
    ['#cc0000', '#000000', 3.57],
    ['#b22222', '#000000', 3.15],
    ['#990000', '#000000', 2.35],
    ['#ffff00', '#000000', 19.56],
    ['#0000ff', '#ffffff', 8.59],
  ] as const) {
    it(`gives ${ratio} for ${one} on ${other}`, () => {
      expect(Math.abs(contrast(one, other) - ratio)).toBeLessThan(0.01);
    });
  }
});

for (const [name, colours, text, accent] of [
  ['day', day, 10, 7],
  ['night', night, 4.5, 4.5],
  ['print', print, 10, 7],
] as const) {
  describe(`by ${name}`, () => {
    for (const [ink, grounds] of texts) {
      for (const ground of grounds) {
        it(`${ink} on ${ground} has at least ${text}:1`, () => {
          expect(contrast(colours[ink]!, colours[ground]!)).toBeGreaterThanOrEqual(text);
        });
      }
    }
    for (const [ink, ground] of accents) {
      it(`${ink} on ${ground} has at least ${accent}:1`, () => {
        expect(contrast(colours[ink]!, colours[ground]!)).toBeGreaterThanOrEqual(accent);
      });
    }
  });
}

describe('night', () => {
  it('has nothing bright that covers more than a line of text', () => {
    for (const ground of ['paper', 'tint', 'ground', 'water', 'solid', 'press']) {
      expect(contrast(night[ground]!, '#000000')).toBeLessThan(2);
    }
  });
});

describe('colours', () => {
  const sheets = readdirSync(client, { recursive: true, encoding: 'utf8' }).filter((path) =>
    /\.(css|tsx)$/.test(path),
  );

  it('are written down in one place', () => {
    const elsewhere = sheets
      .filter((path) => !path.endsWith('themes.css'))
      .filter((path) =>
        /#[0-9a-f]{3,8}\b|\b(rgb|hsl|oklch)a?\(/i.test(
          readFileSync(join(client, path), 'utf8').replaceAll(/url\([^)]*\)/g, ''),
        ),
      );
    expect(sheets.length).toBeGreaterThan(5);
    expect(elsewhere).toEqual([]);
  });

  it('that are used are defined by day and by night', () => {
    const used = sheets.flatMap((path) =>
      [...readFileSync(join(client, path), 'utf8').matchAll(/var\(--([a-z0-9-]+)/g)].map(
        ([, name]) => name!,
      ),
    );
    expect(new Set(used).size).toBeGreaterThan(5);
    const measures = ['time', 'margin', 'gap', 'tick', 'key'];
    const missing = [...new Set(used)]
      .filter((name) => !measures.includes(name))
      .filter((name) => !(name in night) || !(name in day));
    expect(missing).toEqual([]);
  });
});
