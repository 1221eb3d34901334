import { type ClassicEstimate, classicEstimate } from '#domain/forecast/classic.ts';
import type { Shape } from '#domain/forecast/forecast.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { Refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import { criticalPath } from '#domain/schedule/criticalPath.ts';
import { makePlan } from '#domain/schedule/makePlan.ts';
import { workToOpening } from '#domain/schedule/workToOpening.ts';
import { plannedSeconds } from '#domain/tasks/expected.ts';
import { healthOf } from '#domain/tasks/health/healthOf.ts';
import { readWork } from '#domain/tasks/readWork.ts';
import type { TableFile } from '#domain/tasks/tableFile.ts';
import { readTables } from '#domain/tasks/tables.ts';
import type { Work } from '#domain/tasks/work.ts';
import { faultLine } from './faultLine.ts';
import type { CommandIo } from './io.ts';
import { readJson } from './kitFile.ts';
import { type PlanArgs, planArgs, planUsage } from './planArgs.ts';
import { planReport } from './planReport.ts';
import { planText } from './planText.ts';

/** `spanwright plan`: plans a table of tasks and forecasts its opening. Resolves to the exit code. */
export async function run(args: string[], io: CommandIo): Promise<number> {
  const read = planArgs(args);
  if (!read.ok) {
    return fail(io, [read.reason, planUsage]);
  }
  const options = read.value;
  const order = await readOrder(options, io);
  if (!order.ok) {
    return fail(io, order.reason);
  }
  const work = options.dark ? { ...order.value, dark: options.dark } : order.value;
  const report = reportOf(work, options);
  if (!report.ok) {
    return fail(io, report.reason);
  }
  const lines = options.json
    ? [JSON.stringify(report.value, null, 2)]
    : planText(work, report.value);
  for (const line of lines) {
    io.out(line);
  }
  return 0;
}

/** From tables, or whole from a file that ends in `.json`. */
async function readOrder(options: PlanArgs, io: CommandIo): Promise<Result<Work, string[]>> {
  const { file } = options;
  if (!file.endsWith('.json')) {
    return readFromTables(options, io);
  }
  const read = await readJson(file, io);
  const work = read.ok ? readWork(read.value.json, file) : read;
  return work.ok ? work : bad(work.reason.map(faultLine));
}

async function readFromTables(options: PlanArgs, io: CommandIo): Promise<Result<Work, string[]>> {
  const unread: string[] = [];
  const table = async (file: string | undefined): Promise<TableFile | undefined> => {
    if (file === undefined) {
      return undefined;
    }
    try {
      return { file, text: await io.readFile(file) };
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      unread.push(`${file}: cannot be read (${why}).`);
      return undefined;
    }
  };
  const tasks = await table(options.file);
  const crews = await table(options.crews);
  const links = await table(options.links);
  const equipment = await table(options.equipment);
  if (!tasks || unread.length > 0) {
    return bad(unread);
  }
  const work = readTables({ tasks, crews, links, equipment });
  return work.ok ? work : bad(work.reason.map(faultLine));
}

function reportOf(work: Work, options: PlanArgs): Result<ReturnType<typeof planReport>, string[]> {
  const { by: askedFor, runs, seed, shape, seconds } = options;
  // A table without a crew table is planned as if there were people enough; a whole order of work says who there is.
  const crews = options.crews !== undefined || work.crews.length > 0;
  const health = healthOf(work, { shape, crews, askedFor });
  // All that stands in the way of a plan at once, not one after the other.
  const stops = health.filter(({ weight }) => weight === 'stops').map(({ sentence }) => sentence);
  if (stops.length > 0) {
    return bad(stops);
  }
  const critical = criticalPath(work, shape);
  if (!critical.ok) {
    return bad([critical.reason.sentence]);
  }
  const end = seconds === null ? null : performance.now() + seconds * 1000;
  const search =
    end === null
      ? {}
      : { effort: Number.MAX_SAFE_INTEGER, shouldStop: () => performance.now() >= end };
  const plan = makePlan(work, { shape, crews, seed, ...search });
  if (!plan.ok) {
    return bad([plan.reason.sentence]);
  }
  const classic = classicToOpening(work, shape, askedFor);
  if (!classic.ok) {
    return bad([classic.reason.sentence]);
  }
  const forecast = simulate(work, plan.value, { runs, seed, shape, askedFor });
  return good(planReport(work, plan.value, critical.value, classic.value, forecast, health));
}

/** The textbook's single path, to the opening: what comes after it has no part in when traffic may cross. */
function classicToOpening(
  work: Work,
  shape: Shape,
  askedFor: number | null,
): Result<ClassicEstimate, Refusal> {
  const critical = criticalPath(workToOpening(work), shape);
  if (!critical.ok) return critical;
  const { path, minutes } = critical.value;
  const onPath = work.tasks.filter(({ id }) => path.includes(id)).map((task) => task.minutes);
  const atWork = onPath.reduce((sum, each) => sum + plannedSeconds(each, shape, 1) / 60, 0);
  return good(classicEstimate(onPath, askedFor, Math.round((minutes - atWork) * 60) / 60));
}

function fail(io: CommandIo, lines: readonly string[]): number {
  for (const line of lines) {
    io.err(line);
  }
  return 2;
}
