import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import type { KitListed } from '#shared/wireBuilds.ts';
import { axeFaults } from '#tests/support/axe.ts';
import { finishAll } from '#tests/support/finishAll.ts';
import { openBuild, openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('shows planned against actual crew by crew while it is built, by touch and by key', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('leader'));
  await page.getByRole('link', { name: 'After', exact: true }).click();
  await page.getByRole('heading', { name: 'Planned and as it went' }).waitFor();
  const ladder = page.getByRole('region', { name: 'Left girder' });
  await ladder.getByRole('button', { name: /^Bay 1, left.* planned, .* taken$/ }).focus();
  await page.keyboard.press('Enter');
  await page
    .getByRole('status')
    .getByText(/^Bay 1, left.* planned, .* taken\.$/)
    .waitFor();
  await page.getByText('Proposed once the bridge is open.').waitFor();
  expect(await axeFaults(page)).toEqual([]);

  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Tasks (CSV)' }).click();
  const file = await saved;
  expect(file.suggestedFilename()).toBe(`${build.build}-tasks.csv`);
  const text = await readFile(await file.path(), 'utf8');
  expect(text.split('\r\n')[0]).toBe('task,name,crews,planned,actual,usual,trust');
  expect(text).toContain('Bay 1, left');
});

it('proposes minutes once the bridge is open, and keeps an own kit with those that the leader takes (phone)', async () => {
  const build = await openDemo(stage.site, 'half-built');
  await finishAll(build);
  const page = await stage.pages.open(build.page('leader'), { size: 'phone', colours: 'night' });
  await page.getByRole('link', { name: /^Planned against actual/ }).click();
  await page.getByText(/^Open since \d\d:\d\d/).waitFor();
  const proposals = page.getByRole('region', { name: 'Minutes for the kit' });
  const first = proposals.getByRole('checkbox').first();
  await first.waitFor();
  const of = await proposals.getByRole('checkbox').count();
  expect(of).toBeGreaterThan(3);
  await proposals.getByText(`${of} of ${of} taken.`).waitFor();
  await proposals
    .getByText(/rests on 1 build/)
    .first()
    .waitFor();
  expect(await axeFaults(page)).toEqual([]);

  await proposals.getByRole('button', { name: 'Take none' }).click();
  const accept = proposals.getByRole('button', { name: /^Make your own copy/ });
  expect(await accept.isDisabled()).toBe(true);
  await first.click();
  await proposals.getByLabel('Name of your own kit').fill('Heron 2');
  await proposals.getByText(/beginning with a letter or digit/).waitFor();
  await proposals.getByLabel('Name of your own kit').fill('heron-platoon');
  await accept.click();
  await proposals.getByText(/is kept here\. Choose it/).waitFor();
  // The same name again is refused in words, and nothing is overwritten.
  await accept.click();
  await proposals.getByText(/^Refused\. /).waitFor();
  const { json } = await stage.site.ask<{ kits: KitListed[] }>(
    'GET',
    '/api/kits',
    build.secret('leader'),
  );
  expect(json.kits.map(({ name }) => name)).toContain('heron-platoon');
});

it('has nothing to compare, and says so, where nothing was built', async () => {
  const build = await openBuild(stage.site, { kind: 'empty' });
  const page = await stage.pages.open(build.page('leader').replace('/leader', '/leader/after'));
  await page.getByText(/^Nothing has been finished/).waitFor();
  await page.getByText(/came from tables/).waitFor();
  expect(await axeFaults(page)).toEqual([]);
});
