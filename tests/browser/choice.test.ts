import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeFaults } from '#tests/support/axe.ts';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openBuild, openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

/** A short gap with a soft bank: several bridges of the kit answer it. */
const measured = {
  'Gap, m': '16',
  'Load class wanted': '30',
  'Room behind the near bank, m': '45',
  'Height of the near bank, m': '4',
  'Height of the far bank, m': '4',
  'Depth of the water, m': '2',
  'Rise of the water, cm an hour': '5',
} as const;

async function measure(page: Page): Promise<void> {
  for (const [label, value] of Object.entries(measured)) {
    await page.getByLabel(label, { exact: true }).fill(value);
  }
}

it.each(Object.keys(sizes) as Size[])(
  'takes a leader from an empty ground to a chosen bridge with its stage diagram, by day and night (%s)',
  async (size) => {
    const build = await openBuild(stage.site, { kind: 'empty' });
    const colours = size === 'phone' ? 'night' : 'day';
    const page = await stage.pages.open(build.page('leader').replace('/leader', '/leader/ground'), {
      size,
      colours,
    });
    await measure(page);
    await page.getByRole('heading', { name: /^Heron: \d+\.0 m in \d+ bays$/ }).waitFor();

    // What the answer hangs on leads to its field, out of the fold that it lies in.
    await page.getByRole('button', { name: 'Strength of the near ground, kPa' }).click();
    const unknown = page.getByLabel('not measured: Strength of the near ground, kPa');
    expect(await unknown.evaluate((box) => box === document.activeElement)).toBe(true);
    await unknown.uncheck();
    await page.getByLabel('Strength of the near ground, kPa', { exact: true }).fill('20');
    await page
      .getByText(/^The near rollers press with \d+ kN and the ground there bears 20 kPa/)
      .waitFor();
    await page
      .getByRole('button', { name: 'Strength of the near ground, kPa' })
      .waitFor({ state: 'detached' });

    // Water with a level and a limit has a time: 0.5 m at 5 cm an hour.
    await page.getByLabel('not measured: Water on the gauge now, m').uncheck();
    await page.getByLabel('Water on the gauge now, m', { exact: true }).fill('1.2');
    await page.getByLabel('not measured: Level at which work stops, m').uncheck();
    await page.getByLabel('Level at which work stops, m', { exact: true }).fill('1.7');
    await page
      .getByText('Water has 0.50 m to its limit and takes 10 h 00 min at this rise.')
      .waitFor();

    // A soft bank moves the opening, and says by how much.
    await page.getByLabel('Ground of the bank').first().selectOption('soft');
    await page.getByText(/^The soft near bank (moves the opening by|is more work)/).waitFor();

    // The choice: one wanted, the times of each from the server, what rules the others out.
    const choice = page.getByRole('region', { name: 'Which bridge' });
    const wanted = choice.getByRole('heading', { name: /^Wanted: \d+ bays/ });
    await wanted.waitFor();
    await choice
      .getByText(/^even chance within .+, eight in ten within /)
      .first()
      .waitFor();
    await choice.getByText(/^The fastest that fits\. The next, .+, takes .+ more\.$/).waitFor();
    const fitting = choice.getByRole('img', { name: /as the tip lands$/ });
    expect(await fitting.count()).toBeGreaterThan(1);
    await choice
      .getByText(/^Ruled out: .+ later at eight in ten/)
      .first()
      .waitFor();
    await choice.getByRole('heading', { name: 'What rules the others out' }).waitFor();
    const name = ((await wanted.textContent()) ?? '').replace('Wanted: ', '');

    // Another one is looked at, and the wanted one taken again.
    await choice
      .getByRole('button', { name: /^Take this one/ })
      .last()
      .click();
    await page.getByText(`A better one fits here: ${name}. Why stands below.`).waitFor();
    await page.getByRole('button', { name: 'Take the better one' }).click();
    await choice.getByText('This one is looked at.').waitFor();

    // Many drawings: they open on demand.
    await page.getByRole('heading', { name: 'Stages of the launch' }).click();
    const launch = page.getByRole('region', { name: 'Stages of the launch' });
    const drawings = launch.getByRole('img', { name: /^Stage \d+ to scale\./ });
    const stages = await drawings.count();
    expect(stages).toBeGreaterThan(1);
    expect(await launch.getByText(/^Margin \d+\.\d m; the kit asks for \d\.\d m\.$/).count()).toBe(
      stages,
    );
    expect(await axeFaults(page)).toEqual([]);

    await page.getByRole('button', { name: 'Choose this bridge' }).click();
    await page
      .getByRole('status')
      .getByText(/^In the record, number \d+\.$/)
      .waitFor();
    const { bridge, ground } = await build.state();
    expect(bridge?.softBanks).toEqual(['near']);
    expect(ground).toMatchObject({ near: { strength: 20, soil: 'soft' }, water: { limit: 1.7 } });
    expect(ground?.wind).toBeNull();

    // The same stages on a page of their own, with a table of all of them.
    await toLeaderPage(page, 'Launch');
    const table = page.getByRole('region', { name: 'All stages' });
    await table.waitFor();
    expect(await table.getByRole('row').count()).toBe(bridge!.stages.length + 1);
    expect(await page.getByRole('img', { name: /^Stage \d+ to scale\./ }).count()).toBe(
      bridge!.stages.length,
    );
    expect(await axeFaults(page)).toEqual([]);
    // A drawing may shrink, the page may not grow wider than the screen.
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider).toBeLessThanOrEqual(0);
  },
);

it('says on every sheet of paper what the program is not, and that the kit is not for use', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('leader').replace('/leader', '/leader/launch'));
  await page.getByRole('img', { name: /^Stage 7 to scale\./ }).waitFor();
  await page.emulateMedia({ media: 'print' });
  const foot = page.getByRole('contentinfo');
  expect(await foot.textContent()).toMatch(/Planning aid\..+not for use/);
  expect(await foot.evaluate((one) => getComputedStyle(one).display)).toBe('table-footer-group');
  for (const gone of ['Print', 'Stopped half-way']) {
    expect(await page.getByText(gone, { exact: true }).first().isVisible()).toBe(false);
  }
});

it('says from the leader’s home what holds a bridge that stopped half-way, and the way back', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('leader'), { size: 'phone', colours: 'night' });
  await page.getByRole('link', { name: /^Stopped half-way\?/ }).click();
  await page.getByRole('heading', { level: 1, name: 'Stopped half-way' }).waitFor();

  // Four moves are done: the bridge stands at the end of the fourth.
  const where = page.getByLabel('How far it went, m');
  expect(await page.getByLabel('Move that was begun last').inputValue()).toBe('4');
  expect(await where.inputValue()).toBe('6');
  await page.getByText('The balance is 2.8 m behind the front rollers.').waitFor();

  // Half-way through the fifth, with bays 9 to 11 and their deck behind: 2.3 m at its end and 8 m long, so that the
  // balance 3 m into it lies 5 m further back.
  await page.getByLabel('Move that was begun last').selectOption('5');
  await where.fill('3');
  await page.getByText('The balance is 7.3 m behind the front rollers.').waitFor();
  const back = page.getByRole('listitem').filter({ hasText: /Undo move \d/ });
  expect(await back.count()).toBe(5);
  expect(await back.first().textContent()).toMatch(
    /^Undo move 5: back 3\.0 m, margin 7\.3 m or more\.Then take the deck off bays 8 to 11 and take off bays 9 to 11\.$/,
  );
  await where.fill('9');
  await page.getByText('Enter metres from 0 to 8.0 m.').waitFor();
  await where.fill('3');
  expect(await axeFaults(page)).toEqual([]);
});
