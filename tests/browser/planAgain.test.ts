import type { Locator } from 'playwright-core';
import { expect, it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it.each(Object.keys(sizes) as Size[])(
  'tries other minutes and people in a running build, shows old and new side by side, and records on acceptance (%s)',
  async (size) => {
    const build = await openDemo(stage.site, 'half-built');
    const page = await stage.pages.open(build.page('leader'), { size });
    await toLeaderPage(page, 'Work');
    await page.getByRole('searchbox', { name: 'Find' }).fill('bay 11');
    await page.getByRole('link', { name: /Bay 11, left side/ }).click();
    const change = page.getByRole('region', { name: 'Change it' });

    // Numbers that do not rise are refused where they stand. Minutes and people come first, a fixed start after them.
    const add = change.getByRole('button', { name: 'Add to the changes' }).first();
    const minutes = change.getByRole('group', { name: 'Minutes' });
    await minutes.getByLabel('Likely').fill('40');
    await add.click();
    await minutes.getByText('Quick, likely and slow in rising order, in minutes.').waitFor();
    await minutes.getByLabel('Slow').fill('80');
    await change.getByRole('group', { name: 'People of Left girder' }).getByLabel('Most').fill('7');
    await add.click();
    await page.getByText('1 change is not planned yet.').waitFor();
    const before = await build.state();

    await page.getByRole('link', { name: 'Look at them and plan again' }).click();
    await page.getByRole('button', { name: 'Plan again' }).click();
    const both = page.getByRole('region', { name: 'As it stands, and as it would be' });
    const headline = (name: string) =>
      both
        .getByRole('region', { name, exact: true })
        .getByText(/^Nine in ten by/)
        .textContent();
    const [old, proposed] = [await headline('As it stands'), await headline('With this plan')];
    expect(old).toMatch(/^Nine in ten by \d\d:\d\d/);
    expect(proposed).toMatch(/^Nine in ten by \d\d:\d\d/);
    expect(proposed).not.toBe(old);
    // The sentence says by how many minutes the two times beside it differ.
    const says = await both.getByRole('heading', { name: /later/ }).textContent();
    const [was, is] = [
      await plannedIn(both, 'As it stands'),
      await plannedIn(both, 'With this plan'),
    ];
    expect(says).toMatch(new RegExp(`^Opens ${(is - was + 1440) % 1440} min later; changes `));
    await both.getByRole('region', { name: 'What moves' }).getByRole('listitem').first().waitFor();
    // Until it is accepted nothing is recorded.
    expect((await build.state()).number).toBe(before.number);

    await page.getByRole('button', { name: 'Accept this plan' }).click();
    await page.getByText(/^Plan 2, accepted \d\d:\d\d\./).waitFor();
    const after = await build.state();
    expect(after.planCount).toBe(2);
    expect(after.work.tasks.find(({ id }) => id === 'bay-11-left')).toMatchObject({
      minutes: { likely: 40, slow: 80 },
      needs: [{ people: { most: 7 } }],
    });
    // What has begun keeps its past.
    expect(after.tasks['bay-9-left']).toEqual(before.tasks['bay-9-left']);
    await toLeaderPage(page, 'Now');
    // The forecast is made anew for the plan in force: what it said before must go.
    const opening = page.getByRole('heading', { level: 1, name: /^Nine in ten by \d\d:\d\d/ });
    await expect.poll(() => opening.textContent()).not.toBe(old);
  },
);

/** The opening by planned minutes that one side of the comparison shows, in minutes of the day. */
async function plannedIn(both: Locator, name: string): Promise<number> {
  const line = both.getByRole('region', { name, exact: true }).getByText(/^By planned minutes/);
  const [, hours, minutes] = /(\d\d):(\d\d)/.exec((await line.textContent()) ?? '') ?? [];
  return 60 * Number(hours) + Number(minutes);
}
