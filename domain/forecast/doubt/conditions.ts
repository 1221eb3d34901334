import type { Doubt } from './doubt.ts';
import { fahrenheit, heatFactor, workRest } from './heat.ts';

/** One condition with the value used and where it comes from, for the sheet. */
export type ConditionUsed = {
  readonly name: 'weather' | 'training' | 'site' | 'dress' | 'heat' | 'light';
  readonly on: boolean;
  readonly factor: number;
  readonly source: string;
  /** In plain words: what the figure stands for. */
  readonly words: string;
};

/** Every condition, used or not. The one of light holds in the dark alone. */
export function conditionsUsed(doubt: Doubt): ConditionUsed[] {
  const { weather, training, site, dress, heat, light } = doubt;
  const inHour = workRest(fahrenheit(heat.wbgt), heat.effort, heat.dress);
  const stated = [
    { name: 'weather', ...weather, words: 'bad weather' },
    { name: 'training', ...training, words: 'crews that are not practised' },
    { name: 'site', ...site, words: 'a bad site' },
    { name: 'dress', ...dress, words: 'work in protective dress' },
  ] as const;
  return [
    ...stated,
    {
      name: 'heat',
      on: heat.on,
      factor: heatFactor(inHour),
      source: heat.source,
      words: `${inHour.work} min work and ${inHour.rest} min rest in each hour`,
    },
    {
      name: 'light',
      on: light.on,
      factor: darkFactor(doubt),
      source: light.source,
      words: light.lights ? 'in the dark, with work lights' : 'in the dark',
    },
  ];
}

/** How much longer everything takes in the dark. */
export function darkFactor({ light }: Doubt): number {
  return light.lights ? Math.min(light.factor, light.lit) : light.factor;
}

/**
 * What all minutes are multiplied by, light apart. The table that the additions come from does not say whether several
 * are added up or multiplied; here they are multiplied.
 */
export function conditionsFactor(doubt: Doubt): number {
  return conditionsUsed(doubt)
    .filter(({ name, on }) => on && name !== 'light')
    .reduce((product, { factor }) => product * factor, 1);
}

/** The rule in words, with the figures: "Multiplied: 1.3 x 1.2 = 1.56. In the dark 1.5 more." */
export function conditionsSentence(doubt: Doubt): string {
  const used = conditionsUsed(doubt).filter(({ on }) => on);
  const steady = used.filter(({ name }) => name !== 'light').map(({ factor }) => figure(factor));
  const product = figure(conditionsFactor(doubt));
  const first =
    steady.length === 0
      ? 'No condition makes the minutes longer.'
      : steady.length === 1
        ? `All minutes are multiplied by ${product}.`
        : `Conditions are multiplied: ${steady.join(' x ')} = ${product}.`;
  const dark = used.some(({ name }) => name === 'light')
    ? ` In the dark everything takes ${figure(darkFactor(doubt))} times as long again.`
    : '';
  return first + dark;
}

function figure(value: number): string {
  return String(Math.round(value * 100) / 100);
}
