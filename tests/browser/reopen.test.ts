import { expect, it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('brings a finished bay back as attempt 2 when the leader reopens it, and says what rested on it', async () => {
  const build = await openDemo(stage.site, 'half-built');
  await build.finishBefore('ready-5');
  await build.send('inspector', 'pass-hold', {
    task: 'ready-5',
    name: 'SSgt Ruth Calder',
    values: { bays: 11, decked: 4, pins: true, level: 2, wind: 5, packing: true, margin: 2.6 },
    remark: '',
  });
  const inspector = await stage.pages.open(build.page('inspector'));
  const commander = await stage.pages.open(build.page('commander'));
  const card = await stage.pages.open(build.page('left'), { size: 'phone' });
  const page = await stage.pages.open(
    build.page('leader').replace('/leader', '/leader/work/bay-10-left'),
  );
  await inspector
    .getByText(/^passed \d\d:\d\d by SSgt Ruth Calder/)
    .last()
    .waitFor({ state: 'attached' });

  await page.getByText('Reopen finished work', { exact: true }).click();
  await page.getByRole('button', { name: 'Reopen it' }).click();
  await page.getByText('Say what is wrong: the crew must know.').waitFor();
  await page.getByLabel('What is wrong').fill('pin missing at the lower chord');
  await page.getByRole('checkbox', { name: 'Brace bay 10 (96)' }).check();
  await page.getByRole('button', { name: 'Reopen it' }).click();
  await page.getByText('attempt 2').first().waitFor();

  // The crew has it on its card again, the hold that was passed on its strength lapses, on every page at once.
  const job = card.getByRole('article', { name: 'Bay 10, left side' });
  await job.getByText(/again, attempt 2/).waitFor();
  const why =
    /pass lapsed \d\d:\d\d: Bay 10, left side \(91\) came back: pin missing at the lower chord/;
  await inspector.getByText(why).first().waitFor();
  await commander
    .getByRole('listitem')
    .filter({ hasText: 'Ready for move 5' })
    .getByText(/lapsed/)
    .waitFor();
  await toLeaderPage(page, 'Now');
  await page
    .getByRole('region', { name: 'Needs you now' })
    .getByText(/^Bay 11, left side \(94\) was started on the strength of Bay 10, left side \(91\)/)
    .waitFor();

  const { tasks } = await build.state();
  for (const task of ['bay-10-left', 'brace-10']) {
    expect(tasks[task], task).toMatchObject({ status: 'to-come', attempt: 2 });
  }
  expect(tasks['ready-5']).toMatchObject({ hold: 'lapsed' });
  expect(tasks['bay-11-left']).toMatchObject({ status: 'done', flagged: true });
  expect(tasks['bay-10-right']).toMatchObject({ status: 'done', attempt: 1 });
});
