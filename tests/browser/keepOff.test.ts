import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { tap } from '#tests/support/pageTaps.ts';
import { openBuild, openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

/** Two crews of seven, four of each in the move itself. */
const tables = {
  kind: 'tables',
  tasks: [
    'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens',
    'panel,Carry the panel,right,4-6-6,3,4,7,,near,,,',
    'move,Move the bridge,left:4 right:4,,2,3,7,panel,near,yes,,',
    'pins,See the pins,left,2,2,3,7,move,near,,,yes',
  ].join('\r\n'),
  crews: [
    'crew,name,people,from,to,skills',
    'left,Left girder,7,,,',
    'right,Right girder,7,,,',
  ].join('\r\n'),
} as const;

async function seeClear(card: Page, bank: 'Near bank' | 'Far bank', name: string): Promise<void> {
  await tap(card.getByRole('button', { name: 'Say it is seen clear' }).first());
  const sheet = card.getByRole('dialog', { name: 'Seen clear for Move the bridge (2)' });
  await sheet.getByRole('button', { name: bank, exact: true }).click();
  await sheet.getByLabel('Name of who sees it').fill(name);
  await sheet.getByRole('button', { name: `Seen clear, ${bank.toLowerCase()}, 7 people` }).click();
  await sheet.waitFor({ state: 'detached' });
}

it('refuses a keep-off task until every crew has told off and both banks are seen clear by name, then starts it', async () => {
  const build = await openBuild(stage.site, tables);
  await build.plan();
  await build.finish('panel');
  const left = await stage.pages.open(build.page('left'), { size: 'phone' });
  const right = await stage.pages.open(build.page('right'), { size: 'phone' });
  const commander = await stage.pages.open(build.page('commander'));
  const ask = left.getByRole('button', { name: 'Ask to start' });
  const move = async () => (await build.state()).tasks.move?.status;

  // The card says which crew has not told, and what to do; asking all the same is refused with the same words.
  const missing = 'Right girder has not told off: get 3 of 7 off and tell it.';
  await left.getByRole('listitem').getByText(missing).waitFor();
  await left.getByText('The program’s word is not clearance').waitFor();
  await tap(left.getByRole('button', { name: 'Off, 3 of 7' }));
  await left.getByText(/Left girder off, 3 of 7.*in the record/).waitFor();
  await tap(ask);
  await left.getByText(`Refused. ${missing}`).waitFor();
  expect(await move()).toBe('to-come');

  await tap(right.getByRole('button', { name: 'Off, 3 of 7' }));
  await left.getByRole('listitem').getByText(missing).waitFor({ state: 'detached' });
  await tap(ask);
  await left
    .getByText(/^Refused. Have a named person on the near bank see the zones clear/)
    .waitFor();
  expect(await move()).toBe('to-come');

  await seeClear(left, 'Near bank', 'Sgt Holm');
  await seeClear(right, 'Far bank', 'Cpl Stroud');
  await left.getByText('Everything is told. Look again yourself, then ask.').waitFor();
  await tap(ask);
  await left.getByRole('button', { name: 'Done Move the bridge' }).waitFor();
  const { tasks, clearances } = await build.state();
  expect(tasks.move?.status).toBe('at-work');
  expect(tasks.move?.tells).toMatchObject([{ by: { role: 'chief', crew: 'left' } }]);
  expect(clearances).toBeDefined();

  // Each crew ends its own part, and only then is it over.
  await tap(left.getByRole('button', { name: 'Done Move the bridge' }));
  await commander.getByRole('heading', { name: '1 of 3 tasks done' }).waitFor();
  await tap(right.getByRole('button', { name: 'Done Move the bridge' }));
  await commander.getByRole('heading', { name: '2 of 3 tasks done' }).waitFor();
});

it('lets the leader see what is missing, tell it for those on the radio, and start', async () => {
  const build = await openBuild(stage.site, tables);
  await build.plan();
  await build.finish('panel');
  const address = build.page('leader').replace('/leader', '/leader/work/move');
  const page = await stage.pages.open(address);
  const before = page.getByRole('region', { name: 'Before it may start' });
  const start = before.getByRole('button', { name: 'Start Move the bridge' });
  for (const crew of ['Left girder', 'Right girder']) {
    const missing = `${crew} has not told off: get 3 of 7 off and tell it.`;
    await before.getByRole('listitem').getByText(missing).waitFor();
    await start.click();
    await before.getByText(/^Refused\..*has not told off: get 3 of 7 off and tell it\.$/).waitFor();
    await before.getByRole('button', { name: `off: ${crew}` }).click();
    await before.getByText(missing).waitFor({ state: 'detached' });
  }
  for (const [bank, name] of [
    ['near', 'Sgt Holm'],
    ['far', 'Cpl Stroud'],
  ] as const) {
    await start.click();
    const missing = `Have a named person on the ${bank} bank see the zones clear and count heads.`;
    await before.getByRole('status').getByText(missing).waitFor();
    await before.getByLabel(`Who sees it clear, ${bank} bank`).fill(name);
    await before.getByLabel(`People counted, ${bank} bank`).fill('7');
    await before.getByRole('button', { name: `Tell seen clear, ${bank} bank` }).click();
    await before
      .getByRole('button', { name: `Tell seen clear, ${bank} bank` })
      .waitFor({ state: 'detached' });
  }
  expect((await build.state()).tasks.move?.status).toBe('to-come');
  await start.click();
  await page.getByText('It is running. Its zones are closed to all but its own people.').waitFor();
  const { tasks } = await build.state();
  expect(tasks.move).toMatchObject({ status: 'at-work', tells: [{ by: { role: 'leader' } }] });
});

it('shows a false start that is told late as a breach at once, to the leader and to the chief', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const leader = await stage.pages.open(build.page('leader'));
  const chief = await stage.pages.open(build.page('rollers'), { size: 'phone' });
  const log = await stage.pages.open(build.page('log'));
  await leader.getByRole('region', { name: 'Needs you now' }).waitFor();
  await chief.getByRole('heading', { name: /Secure after move 4/ }).waitFor();

  // What comes first is to ask for the start; that it ran all the same is told, with the rule it breaks in sight.
  await log.getByRole('combobox', { name: 'What was said' }).fill('rollers 102 started 4 ago');
  const told = log.getByRole('option', {
    name: /^Rollers, jacks started Move 5, .* Would stand as a breach: Move 5, 8 m, tip lands \(102\)/,
  });
  await told.waitFor();
  await log.keyboard.press('ArrowDown');
  await expect.poll(() => told.getAttribute('aria-selected')).toBe('true');
  await log.keyboard.press('Enter');
  const breach =
    'Move 5, 8 m, tip lands (102) was told started without being asked for: nobody made sure that its zones are clear.';
  await log.getByText(`Breach: ${breach}`).first().waitFor();

  await leader
    .getByRole('region', { name: 'Needs you now' })
    .getByText(`Breach: ${breach}`)
    .waitFor();
  await chief.getByRole('heading', { name: 'Breach, shown to the leader' }).first().waitFor();
  await chief.getByRole('alert').getByText(breach).waitFor();
  const state = await build.state();
  expect(state.tasks['move-5']?.status).toBe('at-work');
  const startedAt = Date.parse(state.tasks['move-5']?.startedAt ?? '');
  expect(Math.round((Date.now() - startedAt) / 60_000)).toBe(4);
});
