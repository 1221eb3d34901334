import type { Link, Work } from '#domain/tasks/work.ts';

/**
 * A multi-skill instance (MiniZinc data) as an order of work: a period is a minute, a person a crew of one with the
 * skills mastered, each person wanted with a skill a need of its own, so that nobody counts twice in one activity.
 */
export function mspspWork(text: string): Work {
  const durations = row(text, 'dur');
  const mastery = table(text, 'mastery').map((cells) => cells.map((cell) => cell === 'true'));
  const crews = mastery.map((masters, at) => ({
    id: `p${at + 1}`,
    name: `Person ${at + 1}`,
    people: 1,
    skills: masters.flatMap((can, skill) => (can ? [`s${skill + 1}`] : [])),
    attached: false,
  }));
  const wanted = table(text, 'sreq').map((cells) => cells.map(Number));
  const tasks = durations.map((minutes, at) => ({
    id: `${at + 1}`,
    number: at + 1,
    name: `Activity ${at + 1}`,
    phase: '',
    needs: wanted[at]!.flatMap((count, skill) =>
      Array.from({ length: count }, () => ({
        anyOf: [],
        people: { least: 1, usual: 1, most: 1 },
        skill: `s${skill + 1}`,
      })),
    ),
    minutes: { quick: minutes, likely: minutes, slow: minutes },
    zones: [],
    keepOff: false,
    opens: false,
    cautions: [],
    tools: [],
    loads: [],
  }));
  const to = row(text, 'succ');
  const links = row(text, 'pred').map(
    (from, at): Link => ({ from: `${from}`, to: `${to[at]!}`, counts: 'finish', wait: 0 }),
  );
  return { tasks, links, crews, zones: [], loads: [] };
}

function row(text: string, name: string): number[] {
  const found = new RegExp(`^${name} = \\[([^\\]]*)\\];`, 'm').exec(text);
  if (!found) throw new Error(`No row ${name}.`);
  return found[1]!.split(',').map(Number);
}

function table(text: string, name: string): string[][] {
  const found = new RegExp(`^${name} = \\[\\|([^\\]]*)\\|\\];`, 'm').exec(text);
  if (!found) throw new Error(`No table ${name}.`);
  const lines = found[1]!.split('|');
  return lines.map((line) =>
    line
      .split(',')
      .map((cell) => cell.trim())
      .filter((cell) => cell !== ''),
  );
}
