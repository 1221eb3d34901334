import { expect, it } from 'vitest';
import { type Size, sizes } from '#tests/support/pages.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

const tasks = [
  'task,name,crews,people,quick,likely,slow,after,zones,keepoff,hold,opens',
  'pegs,Set out pegs,left,2-3-4,7,10,16,,near,,,',
  'panel,Carry the panel,right,4-6-6,3,4,7,pegs,near,,,',
  'open,Last look,,,9,13,22,panel,,,yes,yes',
];
const crews = [
  'crew,name,people,from,to,skills',
  'left,Left girder,7,,,',
  'right,Right girder,7,,,',
];

/** So many minutes from now as a time of day in UTC. */
function clockIn(minutes: number): string {
  return new Date(Date.now() + minutes * 60_000).toISOString().slice(11, 16);
}

it.each(Object.keys(sizes) as Size[])(
  'lets the host open a build from tables, says everything wrong in them, and hands out the links (%s)',
  async (size) => {
    const { origin, host } = stage.site;
    const page = await stage.pages.open(`${origin}/#${host}`, { size });
    await page.getByRole('heading', { name: 'New build' }).click();
    await page.getByLabel('tables of tasks, links and crews').check();
    await page.getByLabel('Time zone of the site').fill('UTC');
    await page.getByLabel('Start of work').fill(clockIn(1));
    await page.getByLabel('Opening asked for').fill(clockIn(121));
    await page.getByLabel('Crew table', { exact: true }).fill(crews.join('\n'));

    // Nothing is read in part: each fault with row, column, what stands there and what is expected.
    const broken = [...tasks, 'late,Late,middle,3,9,5,4,nowhere,,maybe,,'].join('\n');
    await page.getByLabel('Task table', { exact: true }).fill(broken);
    const faults = page.getByRole('region', { name: 'Tables' }).getByRole('listitem');
    await faults.filter({ hasText: /row 5, column crews.*middle/ }).waitFor();
    await faults.filter({ hasText: /row 5, column after.*nowhere/ }).waitFor();
    await faults.filter({ hasText: /row 5, column keepoff.*maybe/ }).waitFor();

    await page.getByLabel('Task table', { exact: true }).fill(tasks.join('\n'));
    await page.getByText('Read: 3 tasks, 2 links, 2 crews.').waitFor();
    const open = page.getByRole('button', { name: 'Open the build' });
    await open.click();
    await page.getByText('Give the build a name.').waitFor();
    await page.getByLabel('Name', { exact: true }).fill('Mill Weir');
    await open.click();

    await page.getByRole('heading', { name: 'Mill Weir is open.' }).waitFor();
    const opened = page.waitForEvent('popup');
    await page.getByRole('link', { name: 'Open Leader', exact: true }).click();
    const leader = await opened;
    await leader
      .getByRole('region', { name: 'Needs you now' })
      .getByText('There is no plan yet: nobody knows who does what when.')
      .waitFor();
    const address = await page
      .getByRole('textbox', { name: 'Address for Left girder' })
      .inputValue();
    expect(address).toMatch(new RegExp(`^${origin}/b/[^/]+/chief#\\S+$`));
    const card = await stage.pages.open(address, { size: 'phone' });
    await card.getByRole('heading', { level: 1, name: /^Left girder 7 of 7 fit/ }).waitFor();
    // The list of the server's builds has it too.
    await page.getByRole('listitem').filter({ hasText: 'Mill Weir' }).first().waitFor();
  },
);

it('starts the demo half built from the start page, with a link for everybody', async () => {
  const { origin, host } = stage.site;
  const page = await stage.pages.open(`${origin}/#${host}`);
  await page.getByRole('button', { name: 'Start the demo half built' }).click();
  for (const who of ['Leader', 'Log keeper', 'Cpl Tam Ashby', 'Inspector', 'Commander']) {
    await page.getByRole('link', { name: `Open ${who}`, exact: true }).waitFor();
  }
  const opened = page.waitForEvent('popup');
  await page.getByRole('link', { name: 'Open Commander', exact: true }).click();
  const commander = await opened;
  await commander.getByRole('heading', { level: 1, name: /^Nine in ten by \d\d:\d\d/ }).waitFor();
  await commander.getByRole('heading', { name: /^8 of 11 bays/ }).waitFor();
});
