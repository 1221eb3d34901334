import { expect, it } from 'vitest';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('lets the log keeper enter for a crew by crew and task number, by keyboard alone, with who said it', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const page = await stage.pages.open(build.page('log'));
  const line = page.getByRole('combobox', { name: 'What was said' });
  await expect.poll(() => line.evaluate((input) => input === document.activeElement)).toBe(true);

  await page.keyboard.type('right 88 done, by Sapper Ek');
  const meant = page.getByRole('option', {
    name: /Right girder finished Bay 9, right side \(88\)/,
  });
  await meant.waitFor();
  expect(await meant.getAttribute('aria-selected')).toBe('true');
  await page.keyboard.press('Enter');
  await page.getByRole('status').getByText('In the record, number').waitFor();

  const last = page.getByRole('region', { name: 'Last entries' }).getByRole('listitem').first();
  await expect
    .poll(() => last.textContent())
    .toMatch(
      /Right girder finished Bay 9, right side \(88\).*said by Sapper Ek, entered by Log keeper/s,
    );
  // The line is empty and ready for the next call.
  expect(await line.inputValue()).toBe('');
  expect(await line.evaluate((input) => input === document.activeElement)).toBe(true);

  const state = await build.state();
  expect(state.tasks['bay-9-right']?.status).toBe('done');
  expect(state.tells.at(-1)).toMatchObject({ saidBy: 'Sapper Ek', by: { role: 'log' } });
});
