import type { Ground } from '#domain/bridge/ground.ts';
import larchFord from '#domain/kits/larchFord.json' with { type: 'json' };
import type { Command } from '#domain/progress/command.ts';
import type { OpenedBuild } from '#shared/wireBuilds.ts';
import { designWork } from '../kits.ts';
import { openBuild } from '../live/openBuild.ts';
import type { OpenDemo, Site } from '../site.ts';
import { larchFordOpening, larchFordStory, type When } from './larchFord.ts';
import { playBuild } from './playBuild.ts';
import { setScene } from './setScene.ts';
import { tellForecasts } from './tellForecasts.ts';

type Needs = Pick<Site, 'clock' | 'ids' | 'ledger' | 'kits' | 'planner' | 'program'>;

/** Starts the demo build: fresh, to be planned from now; or half built, played up to now. */
export function demoOpener(site: Needs): OpenDemo {
  return async (how): Promise<OpenedBuild> => {
    const designed = designWork(site.kits, { ground: larchFord as Ground, kit: 'heron' });
    if (!designed.ok) throw new Error(`demo: ${designed.reason.sentence}`);
    const now = site.clock.now();
    const openFor = (when: When) =>
      larchFordOpening({
        ...when,
        program: site.program,
        ground: larchFord as Ground,
        ...designed.value,
      });

    if (how === 'fresh') {
      // On the next full quarter of an hour, half an hour from now at the soonest.
      const quarter = 15 * 60_000;
      const start = new Date(Math.ceil((now.getTime() + 2 * quarter) / quarter) * quarter);
      const at = now.toISOString();
      return opened(
        await openBuild(site, {
          id: site.ids.long(),
          kind: 'open-build',
          body: openFor({ start }),
          by: { role: 'leader', name: 'Leader' },
          happenedAt: at,
          receivedAt: at,
        }),
      );
    }

    const { opening, ...first } = await setScene(site.planner, openFor, now);
    const start = new Date(opening.start);
    const until = (now.getTime() - start.getTime()) / 60_000;
    const [open, ...more] = playBuild(larchFordStory(opening, first), until, site.ids.long);
    const demo = opened(
      await openBuild(site, open as Extract<Command, { kind: 'open-build' }>, more),
    );
    await tellForecasts(site, demo.build, { start, now });
    return demo;
  };
}

function opened(result: Awaited<ReturnType<typeof openBuild>>): OpenedBuild {
  if (!result.ok) throw new Error(`demo: ${result.reason.sentence}`);
  return result.value;
}
