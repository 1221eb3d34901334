import type { Hold, Measure } from '#domain/tasks/hold.ts';
import type { SiteBuild } from './siteBuild.ts';

/** Tells everything that is left done and passes every hold, in planned order: the bridge is open to traffic then. */
export async function finishAll(build: SiteBuild): Promise<void> {
  const { plan, tasks, work } = await build.state();
  const holds = new Map(work.tasks.flatMap(({ id, hold }) => (hold ? [[id, hold] as const] : [])));
  for (const { task, crews } of plan?.tasks ?? []) {
    if (tasks[task]?.status === 'done') continue;
    const hold = holds.get(task);
    if (hold) {
      const values = valuesOf(hold);
      await build.send('inspector', 'pass-hold', { task, name: 'SSgt Calder', values, remark: '' });
    } else for (const { crew } of crews) await build.send('log', 'tell-finished', { task, crew });
  }
}

function valuesOf({ measures }: Hold): Record<string, number | boolean> {
  return Object.fromEntries(measures.map((measure) => [measure.key, goodValue(measure)]));
}

/** A value inside every limit. */
function goodValue({ unit, reckoned, least, most, soft }: Measure): number | boolean {
  if (unit === 'yes') return true;
  if (reckoned !== undefined) return reckoned;
  const [low, high] = [soft?.least ?? least, soft?.most ?? most];
  if (low !== undefined && high !== undefined) return (low + high) / 2;
  return low ?? (high !== undefined ? high * 0.3 : 0);
}
