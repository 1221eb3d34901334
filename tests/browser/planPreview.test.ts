import { expect, it } from 'vitest';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

it('plans tables on the device before the build is opened, and says what to mend in them', async () => {
  const { site, pages } = stage;
  const page = await pages.open(`${site.origin}/#${site.host}`, { size: 'phone' });
  await page.getByRole('heading', { name: 'New build' }).click();
  await page.getByLabel('tables of tasks, links and crews').check();
  const tables = page.getByRole('region', { name: 'Tables' });
  await tables
    .getByLabel('Task table', { exact: true })
    .fill(
      'task,people,likely,after,opens\npegs,2,30,,\npanel,2,40,,\nmove,4,10,pegs panel,yes\nlamp,1,90,pegs,\n',
    );
  await tables.getByLabel('Crew table', { exact: true }).fill('crew,people\nleft,4\n');
  const preview = page.getByRole('region', { name: 'How soon would it open?' });
  await preview.getByText(/lamp: nothing waits for it/).waitFor();
  await preview.getByRole('button', { name: 'Plan it here' }).click();
  // Four people: pegs and panel side by side, 40 minutes, then the move.
  await preview.getByText('Opens 50 min after the start.').waitFor();
  await preview.getByText('Proven: no faster order exists with these crews.').waitFor();
  // Other tables: what was found for the old ones goes.
  await tables.getByLabel('Crew table', { exact: true }).fill('crew,people\nleft,3\n');
  await expect.poll(() => preview.getByText(/^Opens/).count()).toBe(0);
  await preview.getByText(/move takes at least 4 people/).waitFor();
});
