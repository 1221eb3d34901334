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
  await page.getByLabel('Rollers out of level, mm').fill(level);
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
    const level = page.getByLabel('Rollers out of level, mm');
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
    await measure(page, '3,5');
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
      values: { level: 3.5 },
    });
  },
);
