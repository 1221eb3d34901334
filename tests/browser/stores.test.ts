import { expect, it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('counts a truck at the tailgate on a phone: what is short names the task it stops, and the record says so', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('leader'), { size: 'phone' });
  await toLeaderPage(page, 'Stores');
  await page.getByRole('heading', { name: '30.6 t of stores on 6 trucks' }).waitFor();
  const truck = page.getByRole('listitem').filter({ hasText: 'Truck 5, deck for bays 6 to 11' });
  await truck.getByText(/25 min late$/).waitFor();
  await truck.getByText('Wanted from').waitFor();
  await truck.getByText('At the latest').waitFor();
  await truck.getByText(/15 min: opens .+ on average \(\d\d:\d\d.* by plan\)/).waitFor();

  // Nothing of the page sticks out at the side of a phone.
  const wide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
  expect(wide).toBe(false);

  await page.getByRole('button', { name: 'It is the wrong load' }).click();
  await page.getByText('Bay 9, left side').first().waitFor();
  await page.getByRole('button', { name: 'One Deck plank fewer' }).click();
  await page.getByRole('button', { name: 'One Deck plank fewer' }).click();
  await page.getByText(/2 Deck plank short: stops Deck bay \d+ \(\d+\) first\./).waitFor();
  await page.getByRole('button', { name: 'Truck is here, tell what is short' }).click();
  await expect.poll(async () => (await build.state()).loads['load-5']?.status).toBe('in');
  await expect
    .poll(async () => (await build.state()).events.some(({ kind }) => kind === 'short'))
    .toBe(true);
});

it('opens the stores on the log keeper’s page, with stacks, carrying and who is near moving loads', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('log'));
  await page.getByText('Stores', { exact: true }).click();
  await page.getByRole('img', { name: /^Stacks on both sides/ }).waitFor();
  await page
    .getByText(/a team of 8 should carry at most 241 kg/)
    .first()
    .waitFor();
  await page.getByRole('heading', { name: 'Near moving loads' }).waitFor();
  await page.getByText(/2 ring buoys/).waitFor();
});
