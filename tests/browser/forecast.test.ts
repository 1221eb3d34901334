import { expect, it } from 'vitest';
import { axeFaults } from '#tests/support/axe.ts';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it.each(Object.keys(sizes) as Size[])(
  'says how the forecast stands and moved, tries a switch before it is saved, and finds what would move it (%s)',
  async (size) => {
    const build = await openDemo(stage.site, 'half-built');
    const page = await stage.pages.open(build.page('leader'), { size });
    await page.getByRole('link', { name: 'The whole forecast' }).click();
    const region = (name: string) => page.getByRole('region', { name, exact: true });

    await page.getByRole('heading', { level: 1, name: /^Nine in ten by \d\d:\d\d/ }).waitFor();
    await region('In numbers').getByText('Even chance by').waitFor();
    await region('On the way')
      .getByText(/are behind, the last/)
      .waitFor();
    await region('Pace of the crews')
      .getByText(/^Left girder: /)
      .waitFor();
    await region('Light')
      .getByText(/The moon is \d+ % lit\./)
      .waitFor();

    // Something happens: the forecast moves, is marked where it did, and the mark leads to the words.
    const course = region('How the forecast moved');
    const mark = course.getByRole('button', { name: /later: Truck 5.* min late/ }).last();
    // The first forecast is what later ones are held against, once the server has come to it.
    let minutes = 60;
    const later = async (): Promise<number> => {
      await build.send('log', 'tell-load-late', { load: 'load-5', minutes, why: 'broken down' });
      minutes += 60;
      return mark.count();
    };
    await expect.poll(later, { interval: 8000, timeout: 60_000 }).toBeGreaterThan(0);
    await mark.focus();
    await page.keyboard.press('Enter');
    expect(await mark.getAttribute('aria-pressed')).toBe('true');
    await course
      .getByRole('listitem')
      .filter({ hasText: /Truck 5.* min late/ })
      .last()
      .waitFor();
    await region('What moved the opening')
      .getByText(/Truck 5.* min late/)
      .first()
      .waitFor();

    // A switch shows what it does; nothing is recorded until it is saved.
    const before = await build.state();
    await page.getByRole('checkbox', { name: 'Weather', exact: true }).click();
    const trial = region('What the change does');
    await trial.getByText(/Nine in ten: .* later\./).waitFor();
    expect((await build.state()).number).toBe(before.number);
    await trial.getByRole('button', { name: 'Drop the changes' }).click();
    expect(await trial.count()).toBe(0);
    await page.getByRole('checkbox', { name: 'Weather', exact: true }).click();
    await trial.getByText(/Nine in ten: .* later\./).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await trial.getByRole('button', { name: /^Save/ }).click();
    await page.getByText('All minutes are multiplied by 1.3.').waitFor();
    await expect.poll(async () => (await build.state()).doubt?.weather.on).toBe(true);

    await page.getByRole('button', { name: 'Find out what would move it' }).click();
    const levers = region('What would move it');
    await levers
      .getByRole('listitem')
      .filter({ hasText: 'at even chance' })
      .first()
      .waitFor({ timeout: 60_000 });
    await levers.getByRole('heading', { name: 'What cannot help' }).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
  },
);

it('shows a commander the forecast without the pace of any crew, and nothing to change', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('commander'), { colours: 'night' });
  await page.getByRole('link', { name: 'The whole forecast' }).click();
  await page.getByRole('heading', { name: 'On the way' }).waitFor();
  await page.getByRole('heading', { name: 'What is in doubt' }).waitFor();
  await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
  expect(await page.getByRole('heading', { name: 'Pace of the crews' }).count()).toBe(0);
  expect(await page.getByRole('checkbox').count()).toBe(0);
  expect(await page.getByText(/for each (5|10) planned/).count()).toBe(0);
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('link', { name: 'Back to the commander’s page' }).click();
  await page.getByRole('heading', { name: 'What holds the opening' }).waitFor();

  // Opened by its own address, on a phone: drawn as well as when one comes from another page.
  const address = build.page('commander').replace('/commander', '/commander/forecast');
  const phone = await stage.pages.open(address, { size: 'phone' });
  const drawn = phone.getByRole('img', { name: /^How the forecast moved/ });
  await drawn.waitFor();
  const line = drawn.locator('.d-heavy').first();
  expect(await line.evaluate((path) => getComputedStyle(path).fill)).toBe('none');
  expect(
    await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth),
  ).toBeLessThanOrEqual(0);
});
