import { readFileSync } from 'node:fs';
import { it } from 'vitest';
import { toLeaderPage } from '#tests/support/leaderPages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();
const heron = readFileSync(new URL('../../domain/kits/heron.json', import.meta.url), 'utf8');

it('names each fault of a kit file by its path, then draws the kit once there are none', async () => {
  const build = await openDemo(stage.site, 'fresh');
  const page = await stage.pages.open(build.page('leader'), { size: 'phone' });
  await toLeaderPage(page, 'Kit file');
  const field = page.getByLabel('Kit file (JSON)');
  await field.fill('{ "format": ');
  await page.getByText(/^This is no JSON/).waitFor();

  const faulty = JSON.parse(heron);
  faulty.bay.length = -3;
  faulty.parts[0].mass = 'heavy';
  await field.fill(JSON.stringify(faulty));
  await page.getByRole('heading', { name: '2 faults. Mend each at its path' }).waitFor();
  await page.getByText('/bay/length').waitFor();
  await page.getByText('/parts/0/mass').waitFor();

  await page.getByLabel('Choose a kit file').setInputFiles({
    name: 'heron.json',
    mimeType: 'application/json',
    buffer: Buffer.from(heron),
  });
  await page.getByRole('heading', { name: 'No faults: Heron' }).waitFor();
  await page.getByText('Not for use: its file says so.').waitFor();
  await page.getByText(/^Source: Invented/).waitFor();
  await page.getByRole('img', { name: /^A sample bridge: \d+ bays/ }).waitFor();
  await page.getByText(/^Girder panel: 3\.10 m/).waitFor();
});
