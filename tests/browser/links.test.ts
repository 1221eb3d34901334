import { expect, it } from 'vitest';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('says what to do when a link is unknown, lacks its secret, or leads nowhere', async () => {
  const build = await openDemo(stage.site, 'fresh');
  const other = await openDemo(stage.site, 'fresh');
  const { origin } = stage.site;
  const page = await stage.pages.open(`${origin}/b/${build.build}/chief#nobodyknowsthissecret000`);
  await page.getByRole('heading', { name: 'This link does not open the build' }).waitFor();
  await page.getByText('This link is not known here. Ask the leader for a new one.').waitFor();

  const bare = await stage.pages.open(`${origin}/b/${build.build}/chief`);
  await bare.getByRole('heading', { name: 'This address lacks its secret' }).waitFor();

  const elsewhere = `${origin}/b/${other.build}/chief#${build.secret('left')}`;
  const stray = await stage.pages.open(elsewhere);
  await stray.getByText('This link is not for that build. Open the page of your link.').waitFor();

  const nowhere = await stage.pages.open(`${origin}/b/${build.build}/quartermaster#x`);
  await nowhere.getByRole('heading', { name: 'No such page' }).waitFor();
});

it('closes a page at once when the leader withdraws its link, and keeps the others open', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('commander'));
  await page.getByRole('heading', { name: 'What holds the opening' }).waitFor();
  const log = await stage.pages.open(build.page('log'));
  await log.getByRole('heading', { name: 'Crews now' }).waitFor();

  const { id } = build.links.find(({ role }) => role === 'commander')!;
  const path = `/api/builds/${build.build}/links/${id}`;
  const { status } = await stage.site.ask('DELETE', path, build.secret('leader'));
  expect(status).toBe(204);
  await page.getByRole('heading', { name: 'This link does not open the build' }).waitFor();
  await page.getByText('This link was withdrawn. Ask the leader for a new one.').waitFor();
  await page.reload();
  await page.getByText('This link was withdrawn. Ask the leader for a new one.').waitFor();

  await build.send('left', 'tell-finished', { task: 'bay-9-left', crew: 'left' });
  await log.getByText('Left girder finished Bay 9, left side (87)').waitFor();
});

it('keeps the roles of several links apart that lie open side by side in one browser', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const context = await stage.pages.device();
  const open = (who: string) => stage.pages.open(build.page(who), { context });
  const left = await open('left');
  const right = await open('right');
  const log = await open('log');
  const commander = await open('commander');

  for (const [page, heading] of [
    [left, /Bay 9, left side/],
    [right, /Bay 9, right side/],
  ] as const) {
    await page.getByRole('heading', { name: heading }).waitFor();
  }
  await commander.getByRole('heading', { name: 'What holds the opening' }).waitFor();
  expect(await commander.getByRole('button', { name: /halt/i }).count()).toBe(0);

  await log.getByRole('combobox', { name: 'What was said' }).fill('left 6 fit');
  await log.keyboard.press('Enter');
  await log.getByText('Left girder: 6 fit').first().waitFor();
  await left.getByText('6 of 7 fit').waitFor();
  expect((await build.state()).crews.left?.fit).toBe(6);

  // Colours are chosen by link: one at night, its neighbours by day, also after a reload.
  await left.getByRole('button', { name: 'Change to night colours' }).click();
  const theme = (page: typeof left) => page.evaluate(() => document.documentElement.dataset.theme);
  for (const page of [left, right]) await page.reload();
  await expect.poll(() => theme(left)).toBe('night');
  await expect.poll(() => theme(right)).toBe('day');
  await left.getByRole('heading', { name: /Bay 9, left side/ }).waitFor();
  await right.getByRole('heading', { name: /Bay 9, right side/ }).waitFor();

  // A page of another role does not open by this link, it leads to the one that does.
  await left.goto(build.page('left').replace('/chief#', '/log#'));
  await left.reload();
  await left.getByRole('heading', { name: 'This link is for another page' }).waitFor();
});
