import { expect, it } from 'vitest';
import { type Size, sizes } from '#tests/support/pages.ts';
import { firstSight, nextPress, tap } from '#tests/support/pageTaps.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it.each(Object.keys(sizes) as Size[])(
  'shows a tick of the chief’s phone on the commander’s page within a second and without a reload (%s)',
  async (size) => {
    const build = await openDemo(stage.site, 'half-built');
    await build.finish('bay-9-left', 'bay-9-right', 'secure-4');
    await build.send('bracing', 'tell-started', { task: 'brace-9', crew: 'bracing' });
    const chief = await stage.pages.open(build.page('bracing'), { size: 'phone' });
    const commander = await stage.pages.open(build.page('commander'), { size });
    const leader = await stage.pages.open(build.page('leader'), { size });
    await commander.getByRole('heading', { name: /^8 of 11 bays/ }).waitFor();
    const crewsNow = leader.getByRole('region', { name: 'Crews now' });
    await crewsNow.getByText('Brace bay 9').waitFor();

    const pressed = await nextPress(chief);
    const seen = await firstSight(commander, '9 of 11 bays');
    await tap(chief.getByRole('button', { name: 'Done Brace bay 9' }));
    const took = (await seen()) - (await pressed());
    expect(took).toBeGreaterThanOrEqual(0);
    expect(took).toBeLessThan(1000);

    await crewsNow.getByText('Brace bay 9').waitFor({ state: 'detached' });
    await chief
      .getByRole('status')
      .getByText(/in the record, number \d+/)
      .waitFor();
  },
);
