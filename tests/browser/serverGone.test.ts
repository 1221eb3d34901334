import { expect, it } from 'vitest';
import { tap } from '#tests/support/pageTaps.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('says that the server is gone and since when, keeps a tick, and sends it once the server is back', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const chief = await stage.pages.open(build.page('left'), { size: 'phone' });
  const commander = await stage.pages.open(build.page('commander'));
  const done = chief.getByRole('button', { name: 'Done Bay 9, left side' });
  await done.waitFor();
  await commander.getByText(/^last heard \d+ s ago$/).waitFor();

  await stage.site.kill();
  const lost = /No link. Last heard \d+ s ago: what stands here may be old./;
  await chief.getByRole('status').getByText(lost).waitFor();
  await commander.getByRole('status').getByText(lost).waitFor();

  await tap(done);
  const ticked = Date.now();
  await chief
    .getByText(/Left girder finished Bay 9, left side \(87\).*NOT SENT, trying again/)
    .waitFor();
  // The card goes on with the crew's own word: the job is off it.
  await done.waitFor({ state: 'detached' });

  await stage.site.startAgain();
  await chief
    .getByText(/Left girder finished Bay 9, left side \(87\).*in the record, number \d+/)
    .waitFor({ timeout: 30_000 });
  await chief.getByText(/^last heard \d+ s ago$/).waitFor({ timeout: 30_000 });
  await commander.getByText(/^last heard \d+ s ago$/).waitFor({ timeout: 30_000 });
  const state = await build.state();
  expect(state.tasks['bay-9-left']?.status).toBe('done');
  // It counts from when it was ticked, not from when it came in.
  const finished = Date.parse(state.tasks['bay-9-left']?.finishedAt ?? '');
  expect(Math.abs(finished - ticked)).toBeLessThan(2000);
});
