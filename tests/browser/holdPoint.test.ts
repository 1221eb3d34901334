import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

/** Move 5 lands the tip: the hold before it, and what its failing brings back. */
const hold = 'ready-5';
const redo = [
  'brace-9',
  'brace-10',
  'brace-11',
  'secure-4',
  'deck-8',
  'deck-9',
  'deck-10',
  'deck-11',
];

async function measure(page: Page, level: string): Promise<void> {
  await page.getByLabel('Bays pinned and braced, counted').fill('11');
  await page.getByLabel('Rear bays decked, counted').fill('4');
  await page.getByLabel('Rollers out of level, worst corner, mm').fill(level);
  await page.getByLabel('Balance behind the front rollers, worst of the move, m').fill('2.3');
  await page.getByLabel('Wind, m/s').fill('6.5');
  for (const name of ['Every pin home and clipped', 'Packing close up to the rollers']) {
    await page.getByRole('group', { name }).getByRole('radio', { name: 'Yes' }).check();
  }
}

it.each(Object.keys(sizes) as Size[])(
  'brings work back when the inspector fails a hold, and has the hold passed again (%s)',
  async (size) => {
    const build = await openDemo(stage.site, 'half-built');
    await build.finishBefore(hold);
    const page = await stage.pages.open(build.page('inspector'), { size });
    await page.getByRole('heading', { name: 'Ready for you: Ready for move 5 (101)' }).waitFor();
    const pass = page.getByRole('button', { name: 'Pass: Ready for move 5' });

    // Outside its limit a value is refused with a sentence, and nothing is sent.
    await measure(page, '7');
    await page.getByLabel('Your name').fill('SSgt Ruth Calder');
    await page.getByText('Outside the limit, at most 5 mm: it cannot pass.').waitFor();
    const { number } = await build.state();
    await pass.click();
    const level = page.getByLabel('Rollers out of level, worst corner, mm');
    await expect.poll(() => level.evaluate((field) => field === document.activeElement)).toBe(true);
    expect(await level.getAttribute('aria-invalid')).toBe('true');
    expect((await build.state()).number).toBe(number);

    // Failing it says first what comes back, then brings it back.
    await page.getByRole('button', { name: 'It fails' }).click();
    await page.getByText('If you fail it, this work comes back:').waitFor();
    await page.getByRole('listitem').getByText('Brace bay 10 (96)', { exact: true }).waitFor();
    await page.getByLabel('Why it fails').fill('rollers sank on the left');
    await page.getByRole('button', { name: 'Fail: Ready for move 5' }).click();
    await page.getByText('rollers sank on the left').first().waitFor();
    await expect.poll(() => pass.count()).toBe(0);
    const failed = await build.state();
    expect(failed.tasks[hold]).toMatchObject({ hold: 'failed' });
    expect(failed.tasks[hold]?.inspections.at(-1)).toMatchObject({
      kind: 'failed',
      name: 'SSgt Ruth Calder',
      values: { level: 7, wind: 6.5, bays: 11, decked: 4, pins: true, packing: true },
    });
    for (const task of redo) {
      expect(failed.tasks[task], task).toMatchObject({ status: 'to-come', attempt: 2 });
    }

    // The crew sees it come back, on its own card.
    const card = await stage.pages.open(build.page('rollers'), { size: 'phone' });
    await card.getByText('again, attempt 2').first().waitFor();

    // Done again, the hold asks for its values anew and passes.
    await build.finishBefore(hold);
    await pass.waitFor();
    expect(await level.inputValue()).toBe('');
    await measure(page, '2,5');
    await pass.click();
    await page
      .getByRole('status')
      .getByText(/^In the record, number \d+\.$/)
      .waitFor();
    await page
      .getByRole('heading', { name: 'Nothing to inspect yet. Next is Ready for move 6 (106).' })
      .waitFor();
    await page.getByText('6 passed before').click();
    await page
      .getByRole('listitem')
      .filter({ hasText: 'Ready for move 5' })
      .getByText(/^passed \d\d:\d\d by SSgt Ruth Calder/)
      .first()
      .waitFor();
    const passed = await build.state();
    expect(passed.tasks[hold]).toMatchObject({ hold: 'passed' });
    expect(passed.tasks[hold]?.inspections.at(-1)).toMatchObject({
      kind: 'passed',
      values: { level: 2.5 },
    });
  },
);

it('lets a broken limit stand only by a named higher authority, and shows that wherever the pass is shown', async () => {
  const build = await openDemo(stage.site, 'half-built');
  await build.finishBefore(hold);
  const page = await stage.pages.open(build.page('inspector'), { size: 'phone' });
  await page.getByRole('heading', { name: 'Ready for you: Ready for move 5 (101)' }).waitFor();
  const pass = page.getByRole('button', { name: 'Pass: Ready for move 5' });
  await page.getByText('at least 2 m; reckoned 2.34 m').first().waitFor();

  // A level outside its limit and a wind above where it ought to be.
  await measure(page, '7');
  await page.getByLabel('Wind, m/s').fill('9');
  await page.getByLabel('Your name').fill('SSgt Ruth Calder');
  const broken = page.getByRole('region', { name: 'A hard limit is broken' });
  await broken.getByText('is 7 mm, allowed is at most 5 mm').waitFor();
  const { number } = await build.state();
  await broken.getByRole('button', { name: 'A higher authority concedes it' }).click();
  await pass.click();
  await broken.getByText('A concession wants this.').first().waitFor();
  await page.getByText('Say why it may stand.').waitFor();
  expect((await build.state()).number).toBe(number);

  await broken.getByLabel('Who concedes it').fill('Col Ansgar Reith');
  await broken.getByLabel('Post or office').fill('Bridging staff');
  await broken.getByLabel('Their reason').fill('plates of the bearing take 8 mm');
  await page.getByLabel('Reason for passing it so').fill('tail lines doubled');
  await pass.click();
  await page
    .getByRole('status')
    .getByText(/^In the record, number \d+\.$/)
    .waitFor();
  const passed = (await build.state()).tasks[hold];
  expect(passed?.inspections.at(-1)).toMatchObject({
    kind: 'passed',
    concession: { name: 'Col Ansgar Reith', authority: 'Bridging staff', of: ['level'] },
    allowed: { reason: 'tail lines doubled', of: ['wind'] },
  });

  const commander = await stage.pages.open(build.page('commander'));
  await commander.getByText('(by concession of Col Ansgar Reith, Bridging staff)').waitFor();
  const leader = await stage.pages.open(build.page('leader'));
  await leader
    .getByRole('region', { name: 'Needs you now' })
    .getByText(/passed by SSgt Ruth Calder by concession of Col Ansgar Reith/)
    .waitFor();
});
