import type { Ground } from '#domain/bridge/ground.ts';
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import type { Command } from '#domain/progress/command.ts';
import { firstPlan } from '#server/demo/firstPlan.ts';
import { larchFordOpening, larchFordStory } from '#server/demo/larchFord.ts';
import { playBuild } from '#server/demo/playBuild.ts';
import { designWork } from '#server/kits.ts';
import { openBuild } from '#server/live/openBuild.ts';
import { loadKits } from '#server/loadKits.ts';
import { places } from '#server/places.ts';
import { secretOf, type TestBuild, type TestServer } from './server.ts';
import { plannerHere } from './serverPlanner.ts';

const minutesOfAll = 100_000;

/**
 * Plays the demo's build from its start at `start` (ISO 8601 UTC) for so many minutes, to the opening when none are given,
 * with every truck in time, and puts the record into the server's ledger. The clock is the caller's to move.
 */
export async function playedBuild(
  server: TestServer,
  start: string,
  until = minutesOfAll,
): Promise<TestBuild> {
  const kits = await loadKits(places.kits);
  if (!kits.ok) throw new Error(JSON.stringify(kits.reason));
  const ground = larchFord as Ground;
  const designed = designWork(kits.value, { ground, kit: 'heron' });
  if (!designed.ok) throw new Error(designed.reason.sentence);
  const opening = larchFordOpening({
    start: new Date(start),
    program: 'test',
    ground,
    ...designed.value,
  });
  const first = await firstPlan(plannerHere(), opening, null);
  const story = {
    ...larchFordStory(opening, first),
    missing: new Set<string>(),
    asides: [],
  };
  const [open, ...more] = playBuild(story, until, server.ids.long);
  const opened = await openBuild(server, open as Extract<Command, { kind: 'open-build' }>, more);
  if (!opened.ok) throw new Error(opened.reason.sentence);
  const { build, links } = opened.value;
  const secret = (who: string) => {
    const link = links.find(({ role, crew }) => (crew ?? role) === who);
    if (!link) throw new Error(`the build has no link for ${who}`);
    return secretOf(link.address);
  };
  return { build, links, secret };
}
