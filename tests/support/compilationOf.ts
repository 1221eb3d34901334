import { type Compilation, compile } from '#domain/schedule/compile.ts';
import { manningOf } from '#domain/schedule/manning.ts';
import type { Past } from '#domain/schedule/past.ts';
import { settlePast } from '#domain/schedule/settled.ts';
import type { Work } from '#domain/tasks/work.ts';

/** The work laid out for planning, with crews and the usual shape. Throws where it cannot be manned. */
export function compilationOf(work: Work, past?: Past): Compilation {
  const manning = manningOf(work, 'pert', true);
  const settled = settlePast(manning, past);
  if (!settled.ok) throw new Error(settled.reason.sentence);
  const compilation = compile(manning, settled.value);
  if (!compilation.ok) throw new Error(compilation.reason.sentence);
  return compilation.value;
}
