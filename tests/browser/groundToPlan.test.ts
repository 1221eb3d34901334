import { expect, it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openBuild } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

/** What was measured at the demo's ford, field by field. */
const measured = {
  'Gap, m': '31',
  'Load class wanted': '30',
  'Room behind the near bank, m': '40',
  'Height of the near bank, m': '5.4',
  'Height of the far bank, m': '5.1',
  'Depth of the water, m': '2.2',
  'Rise of the water, cm an hour': '4',
} as const;

it.each(Object.keys(sizes) as Size[])(
  'takes a leader from a measured gap to a bridge, an accepted plan, a time to open and the start (%s)',
  async (size) => {
    const build = await openBuild(stage.site, { kind: 'empty' });
    const page = await stage.pages.open(build.page('leader'), { size });
    const needs = page.getByRole('region', { name: 'Needs you now' });
    await needs.getByText('There is no order of work yet.').waitFor();
    await needs.getByRole('link', { name: 'Measure the ground' }).click();
    await page.getByRole('heading', { name: 'Ground and bridge' }).waitFor();

    // The bridge is there as soon as gap and class are, and says what it hangs on.
    for (const [label, value] of Object.entries(measured)) {
      await page.getByLabel(label, { exact: true }).fill(value);
    }
    await page.getByRole('heading', { name: 'Heron: 33.0 m in 11 bays' }).waitFor();
    await page.getByRole('img', { name: 'Side view of the site: a gap of 31.0 m' }).waitFor();
    // A gap that no number of bays spans is refused with a sentence, and the bridge comes back with the number.
    await page.getByLabel('Gap, m', { exact: true }).fill('150');
    await page.getByRole('heading', { name: 'This kit does not answer the ground' }).waitFor();
    expect(await page.getByRole('button', { name: 'Choose this bridge' }).count()).toBe(0);
    await page.getByLabel('Gap, m', { exact: true }).fill('31');
    await page.getByRole('heading', { name: 'Heron: 33.0 m in 11 bays' }).waitFor();
    await page.getByRole('button', { name: 'Choose this bridge' }).click();
    await page
      .getByRole('status')
      .getByText(/^In the record, number \d+\.$/)
      .waitFor();
    expect((await build.state()).work.tasks.length).toBeGreaterThan(150);

    await toLeaderPage(page, 'Now');
    await page.getByRole('heading', { level: 1, name: 'No plan yet' }).waitFor();
    await needs.getByRole('link', { name: 'Make a plan' }).click();
    await page.getByRole('button', { name: 'Make a plan' }).click();
    const proposal = page.getByRole('region', { name: 'With this plan' });
    await proposal.getByText(/^Nine in ten by \d\d:\d\d/).waitFor();
    await page.getByRole('button', { name: 'Accept this plan' }).click();

    const columns = page.getByRole('region', { name: 'Crew columns' });
    if (size === 'desktop') {
      for (const crew of ['Command', 'Right girder', 'Bracing', 'Far bank']) {
        await columns.getByRole('heading', { name: crew }).waitFor();
      }
    } else {
      // One column at a time on a phone.
      await columns.getByRole('combobox', { name: 'Crew' }).selectOption({ label: 'Left girder' });
      expect(await columns.getByRole('heading').count()).toBe(1);
    }
    await columns.getByRole('list', { name: 'Left girder' }).waitFor();
    await columns
      .getByRole('button', { name: /Bay 1, left side/ })
      .first()
      .waitFor();

    await toLeaderPage(page, 'Now');
    await page.getByRole('heading', { level: 1, name: /^Nine in ten by \d\d:\d\d/ }).waitFor();
    await page.getByText(/^Even chance by \d\d:\d\d/).waitFor();
    const { plan, bridge } = await build.state();
    expect(bridge?.bays).toBe(11);
    expect(plan?.minutesToOpen).toBeGreaterThanOrEqual(plan?.lowerBound ?? Number.NaN);

    // From the plan to the start: what comes first, told for all its crews at once.
    await needs
      .getByRole('listitem')
      .filter({ hasText: /comes first, planned for \d\d:\d\d/ })
      .getByRole('link', { name: 'Open the task' })
      .click();
    await page.getByRole('button', { name: /^Started, all \d+ crews$/ }).click();
    const first = plan!.tasks.toSorted((a, b) => a.start - b.start)[0]!;
    await expect
      .poll(async () => (await build.state()).tasks[first.task]?.status, { timeout: 20_000 })
      .toBe('at-work');
  },
);
