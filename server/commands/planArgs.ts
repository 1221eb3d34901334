import { parseArgs } from 'node:util';
import type { Shape } from '#domain/forecast/forecast.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { Work } from '#domain/tasks/work.ts';

export type PlanArgs = {
  readonly file: string;
  readonly crews: string | undefined;
  readonly links: string | undefined;
  readonly equipment: string | undefined;
  /** When it is dark, minutes after the start; null: the file says, or never. */
  readonly dark: Work['dark'] | null;
  readonly by: number | null;
  readonly runs: number;
  readonly seed: number;
  readonly shape: Shape;
  /** Seconds to search for; null: as long as it takes by default. */
  readonly seconds: number | null;
  readonly json: boolean;
};

export const planUsage =
  'spanwright plan FILE [--crews FILE] [--links FILE] [--equipment FILE] [--dark FROM-TO,...] [--dark-factor X] [--by MINUTES] [--runs N] [--seed N] [--shape pert|triangular] [--seconds S] [--json]';

const options = {
  crews: { type: 'string' },
  links: { type: 'string' },
  equipment: { type: 'string' },
  dark: { type: 'string' },
  'dark-factor': { type: 'string', default: '1' },
  by: { type: 'string' },
  runs: { type: 'string', default: '10000' },
  seed: { type: 'string', default: '1' },
  shape: { type: 'string', default: 'pert' },
  seconds: { type: 'string' },
  json: { type: 'boolean', default: false },
} as const;

/** Reads the arguments of `spanwright plan`; when they are wrong, one sentence that says how. */
export function planArgs(args: string[]): Result<PlanArgs, string> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return bad(error instanceof Error ? error.message : String(error));
  }
  const { values, positionals } = parsed;
  const [file, ...more] = positionals;
  if (file === undefined || more.length > 0) {
    return bad('Give one task table, or one order of work (.json), to plan.');
  }
  const by = values.by === undefined ? null : number(values.by, 0, 1_000_000);
  if (Number.isNaN(by)) {
    return bad(`--by takes minutes from 0 to 1000000, not "${values.by}".`);
  }
  const runs = number(values.runs, 1, 1_000_000);
  if (!Number.isInteger(runs)) {
    return bad(`--runs takes a whole number from 1 to 1000000, not "${values.runs}".`);
  }
  const seed = number(values.seed, -2_147_483_648, 2_147_483_647);
  if (!Number.isInteger(seed)) {
    return bad(`--seed takes a whole number of at most 31 bits, not "${values.seed}".`);
  }
  const { shape } = values;
  if (shape !== 'pert' && shape !== 'triangular') {
    return bad(`--shape takes pert or triangular, not "${shape}".`);
  }
  const seconds = values.seconds === undefined ? null : number(values.seconds, 0, 86_400);
  if (Number.isNaN(seconds)) {
    return bad(`--seconds takes a number from 0 to 86400, not "${values.seconds}".`);
  }
  const factor = number(values['dark-factor'], 1, 10);
  if (Number.isNaN(factor)) {
    return bad(`--dark-factor takes a number from 1 to 10, not "${values['dark-factor']}".`);
  }
  const spells = values.dark === undefined ? null : spellsOf(values.dark);
  if (spells?.some(({ from, to }) => !(from < to))) {
    return bad(`--dark takes minutes such as 300-720,1740-2160, not "${values.dark}".`);
  }
  const dark = spells && { spells, factor };
  const { crews, links, equipment, json } = values;
  const tables = crews ?? links ?? equipment;
  if (file.endsWith('.json') && tables !== undefined) {
    return bad(`${file} is a whole order of work: give it without ${tables}.`);
  }
  return good({ file, crews, links, equipment, dark, by, runs, seed, shape, seconds, json });
}

/** Minutes from-to; not-a-number where they are none. */
function spellsOf(text: string): { from: number; to: number }[] {
  return text.split(',').map((word) => {
    const [, from = '', to = ''] = /^(-?[\d.]+)-([\d.]+)$/.exec(word.trim()) ?? [];
    return { from: number(from, -1_000_000, 1_000_000), to: number(to, 0, 1_000_000) };
  });
}

function parse(args: string[]) {
  return parseArgs({ args, allowPositionals: true, options });
}

/** The number a text is, or not-a-number when it is none or outside the limits. */
function number(text: string, least: number, most: number): number {
  const value = /^-?(\d+(\.\d+)?|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
  return value >= least && value <= most ? value : Number.NaN;
}
