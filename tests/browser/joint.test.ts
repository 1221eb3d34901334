import { expect, it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { tap } from '#tests/support/pageTaps.ts';
import { openBuild } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

const tables = {
  kind: 'tables',
  tasks: [
    'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens',
    'beam,Carry the beam,left:4 right:4,,3,4,7,,,,,',
    'seat,Seat the beam,left,4,3,4,7,beam,,,,yes',
  ].join('\r\n'),
  crews: [
    'crew,name,people,from,to,skills',
    'left,Left girder,7,,,',
    'right,Right girder,7,,,',
  ].join('\r\n'),
} as const;

it('counts a joint task as done only when both chiefs have told so', async () => {
  const build = await openBuild(stage.site, tables);
  await build.plan();
  const left = await stage.pages.open(build.page('left'), { size: 'phone' });
  const right = await stage.pages.open(build.page('right'), { size: 'phone' });
  const commander = await stage.pages.open(build.page('commander'));
  await left.getByText(/with Right girder/).waitFor();

  for (const card of [left, right]) {
    await tap(card.getByRole('button', { name: 'Start Carry the beam' }));
  }
  await tap(left.getByRole('button', { name: 'Done Carry the beam' }));
  await left.getByText(/Left girder finished Carry the beam \(1\).*in the record/).waitFor();
  await commander.getByRole('heading', { name: '0 of 2 tasks done' }).waitFor();
  expect((await build.state()).tasks.beam).toMatchObject({ status: 'at-work' });
  // What comes after it cannot start on the word of one crew.
  expect(await left.getByRole('button', { name: 'Start Seat the beam' }).count()).toBe(0);

  await tap(right.getByRole('button', { name: 'Done Carry the beam' }));
  await commander.getByRole('heading', { name: '1 of 2 tasks done' }).waitFor();
  await left.getByRole('button', { name: 'Start Seat the beam' }).waitFor();
  expect((await build.state()).tasks.beam).toMatchObject({ status: 'done' });
});

it('lets the leader tell a joint task done for all its crews, but not once one of them has stopped', async () => {
  const build = await openBuild(stage.site, tables);
  await build.plan();
  const page = await stage.pages.open(build.page('leader'));
  await toLeaderPage(page, 'Work');
  await page
    .getByRole('link', { name: /Carry the beam/ })
    .first()
    .click();
  const done = page.getByRole('button', { name: 'Done, all 2 crews' });
  await page.getByRole('button', { name: 'Started, all 2 crews' }).click();
  await expect.poll(async () => (await build.state()).tasks.beam?.status).toBe('at-work');
  await done.waitFor();

  await build.send('right', 'tell-stopped', { task: 'beam', crew: 'right', why: 'Sling torn' });
  await page
    .getByText(/Sling torn/)
    .first()
    .waitFor();
  await done.waitFor({ state: 'detached' });
});
