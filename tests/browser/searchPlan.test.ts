import { expect, it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openBuild, openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

/** So crowded that its search is never proven within a test: many tasks that two crews share out among themselves. */
const crowded = {
  kind: 'tables',
  tasks: [
    'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens',
    'start,Orders,,1,2,3,4,,,,,',
    ...Array.from({ length: 60 }, (_, at) => {
      const minutes = 5 + ((at * 7) % 11);
      const after = at < 12 ? 'start' : `t${at - 12 + ((at * 5) % 7)}`;
      const zone = at % 3 === 0 ? 'deck' : '';
      return `t${at},Job ${at},,${1 + (at % 3)}-${3 + (at % 4)}-6,${minutes},${minutes + 2},${minutes + 6},${after},${zone},${at % 10 === 0 && zone ? 'yes' : ''},,`;
    }),
    `open,Open,,1,1,2,3,${Array.from({ length: 12 }, (_, at) => `t${48 + at}`).join(' ')},,,,yes`,
  ].join('\n'),
  crews:
    'crew,name,people,from,to,skills\nleft,Left girder,6,,,\nright,Right girder,5,,,\nfar,Far bank,4,,,\n',
} as const;

it.each(Object.keys(sizes) as Size[])(
  'searches for a better plan with news, is stopped, compares and records on acceptance (%s)',
  async (size) => {
    const build = await openBuild(stage.site, crowded);
    await build.plan();
    const page = await stage.pages.open(build.page('leader'), { size });
    await toLeaderPage(page, 'Plan');
    await page.getByRole('button', { name: 'Search for a better plan' }).click();
    const search = page.getByRole('region', { name: 'Searching for a better plan' });
    await search.getByText(/opens \d\d:\d\d/).waitFor();
    const line = await search.getByRole('status').textContent();
    expect(line).toMatch(
      /^By planned minutes it opens \d\d:\d\d( \+1 day)?\. (No plan can open before \d\d:\d\d( \+1 day)?\.|Proven: no faster order exists)/,
    );
    await search.getByText('More about the search').click();
    await search.getByText(/This one was found after [\d,]+ (try|tries)/).waitFor();
    expect((await build.state()).planCount).toBe(1);

    await search.getByRole('button', { name: 'Stop and take the best so far' }).click();
    const both = page.getByRole('region', { name: 'As it stands, and as it would be' });
    await both
      .getByRole('heading', { level: 3, name: /changes (no orders|\d+ orders? for)/ })
      .waitFor();
    await both
      .getByRole('region', { name: 'With this plan' })
      .getByText(/^Nine in ten by/)
      .waitFor();
    expect((await build.state()).planCount).toBe(1);
    await both.getByRole('button', { name: 'Accept this plan' }).click();
    await page.getByText(/^Plan 2, accepted/).waitFor();
    expect((await build.state()).planCount).toBe(2);
  },
);

it('gives a search up, and the plan in force stands', async () => {
  const build = await openBuild(stage.site, crowded);
  await build.plan();
  const page = await stage.pages.open(`${build.page('leader').replace('#', '/plan#')}`);
  await page.getByRole('button', { name: 'Search for a better plan' }).click();
  await page.getByRole('button', { name: 'Give up' }).click();
  await page.getByText('Stopped. The plan in force stands.').waitFor();
  expect((await build.state()).planCount).toBe(1);
});

// The half-built demo has one hurt in a crew: its plan counts on people who are not there.
it('offers a fresh plan of a build that has drifted, shows it beside the old one, and leaves it when it is not wanted', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('leader'));
  const offer = page.getByRole('region', { name: 'A fresh plan' });
  await offer.getByText(/and a fresh plan is ready/).waitFor({ timeout: 40_000 });
  expect((await build.state()).planCount).toBe(1);
  await offer.getByRole('button', { name: 'Look at both plans' }).click();
  const both = page.getByRole('region', { name: 'As it stands, and as it would be' });
  await both.getByRole('region', { name: 'What moves' }).waitFor();
  await both.getByText(/^Who hears of a change: .*Bracing/).waitFor();
  await both.getByRole('button', { name: 'Drop it' }).click();
  await both.waitFor({ state: 'detached' });
  await expect.poll(() => offer.count()).toBe(0);
  expect((await build.state()).planCount).toBe(1);
});

it('says why it opens then, and what one more person would gain, worked out on the device', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('leader').replace('#', '/plan#'));
  const why = page.getByRole('region', { name: 'Why it opens then' });
  await why.getByText('The chain to the opening').click();
  await why.getByRole('link', { name: /^Open to traffic/ }).waitFor();
  await why.getByText('Time that people stand waiting').click();
  await why.getByText(/^Left girder: \d/).waitFor();
  await why.getByText('What one more person would gain').click();
  await why.getByRole('button', { name: 'Work it out' }).click();
  await why.getByText(/^Plan \d+ of \d+$/).waitFor();
  await why.getByRole('button', { name: 'Stop' }).click();
  await why.getByRole('button', { name: 'Work it out again' }).click();
  await why.getByText(/^Bracing: (opens|no)/).waitFor({ timeout: 60_000 });
});
