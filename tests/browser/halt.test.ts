import { expect, it } from 'vitest';
import { tap } from '#tests/support/pageTaps.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('stops everyone by one press on a chief’s card, until the roll call is whole and the leader lifts it', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const phone = { size: 'phone' } as const;
  const left = await stage.pages.open(build.page('left'), phone);
  const right = await stage.pages.open(build.page('right'), phone);
  const others = {
    leader: await stage.pages.open(build.page('leader')),
    log: await stage.pages.open(build.page('log')),
    inspector: await stage.pages.open(build.page('inspector'), phone),
    commander: await stage.pages.open(build.page('commander'), phone),
  };
  const everyone = [left, right, ...Object.values(others)];
  await left.getByRole('button', { name: 'Done Bay 9, left side' }).waitFor();
  await right.getByRole('button', { name: 'Done Bay 9, right side' }).waitFor();

  await left.getByRole('button', { name: 'Halt everyone' }).click();
  const notice = /^Halt since \d\d:\d\d: loads down, everyone off$/;
  for (const page of everyone) {
    await page.getByRole('alert').getByRole('heading', { name: notice }).waitFor();
    await page.getByRole('alert').getByText('Called by Cpl Tam Ashby.').waitFor();
  }
  const { leader, log, commander } = others;
  await commander.getByText(/^0 of 12 crews have loads down/).waitFor();
  // A second call belongs to the halt that stands: the commander must not read of the first that it was lifted.
  await build.send('right', 'halt', { why: 'pin out' });
  const calls = commander.getByRole('listitem').filter({ hasText: 'called halt' });
  await expect.poll(() => calls.count()).toBe(2);
  expect(await calls.filter({ hasText: 'Lifted since.' }).count()).toBe(0);

  // The chiefs count heads on their cards, the log keeper enters those who have only a radio.
  await tap(left.getByRole('button', { name: /^Loads down, 7 of 7 clear/ }));
  await left.getByText(/7 of 7 clear. Wait until the leader lifts the halt./).waitFor();
  await leader.getByText('1 of 12 crews have answered.').waitFor();
  const lift = leader.getByRole('button', { name: 'Lift the halt' });
  await lift.click();
  await leader
    .getByText(/^Refused. The roll call is open. .*Right girder has not answered/)
    .waitFor();
  expect((await build.state()).halt).not.toBeNull();

  await tap(right.getByRole('button', { name: /^Loads down, 7 of 7 clear/ }));
  const line = log.getByRole('combobox', { name: 'What was said' });
  for (const [typed, said] of [
    ['bracing down 3/3', /Bracing: loads down, 3 of 3 clear/],
    ['rollers down 4/4', /Rollers, jacks: loads down, 4 of 4 clear/],
  ] as const) {
    await line.fill(typed);
    await log.getByRole('option', { name: said }).waitFor();
    await log.keyboard.press('Enter');
    await log.getByRole('listitem').getByText(said).first().waitFor();
  }
  // The leader takes the rest by voice.
  await leader.getByText('4 of 12 crews have answered.').waitFor();
  for (let answered = 4; answered < 12; answered += 1) {
    const open = leader.getByRole('listitem').filter({ hasText: 'has not answered' });
    await open.getByRole('button').first().click();
    await leader.getByText(`${answered + 1} of 12 crews have answered.`).waitFor();
  }
  await lift.click();
  for (const page of everyone) {
    await page.getByRole('heading', { name: notice }).waitFor({ state: 'detached' });
  }

  await expect.poll(() => calls.filter({ hasText: 'Lifted since.' }).count()).toBe(2);

  // Nothing went on by itself: each crew says so when it does.
  const { tasks, halt } = await build.state();
  expect(halt).toBeNull();
  expect(Object.values(tasks).filter(({ status }) => status === 'at-work')).toEqual([]);
  expect(tasks['bay-9-left']?.status).toBe('stopped');
  await tap(left.getByRole('button', { name: 'Go on Bay 9, left side' }));
  await left.getByRole('button', { name: 'Done Bay 9, left side' }).waitFor();
  const after = (await build.state()).tasks;
  expect(after['bay-9-left']?.status).toBe('at-work');
  expect(after['bay-9-right']?.status).toBe('stopped');
});
