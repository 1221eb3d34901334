import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeFaults } from '#tests/support/axe.ts';
import { sizes } from '#tests/support/pages.ts';
import { openBuild, openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

const leaderPages = [
  'ground',
  'work',
  'work/move-5',
  'crews',
  'hours',
  'stores',
  'launch',
  'plan',
  'report',
  'links',
  'record',
  'forecast',
  'after',
  'kit',
];

/** Once the frame stands the page's own part and its first snapshot are here; then whatever else it fetches. */
async function settled(page: Page): Promise<void> {
  await page.getByRole('contentinfo').waitFor();
  await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
}

/** What axe finds on a page as it stands, on a desk by day and on a phone at night. */
async function looked(page: Page, name: string): Promise<string[]> {
  const found: string[] = [];
  for (const [size, colours] of [
    ['desktop', 'day'],
    ['phone', 'night'],
  ] as const) {
    await page.setViewportSize(sizes[size]);
    const change = page.getByRole('button', { name: `Change to ${colours} colours` });
    if ((await change.count()) > 0) await change.click();
    expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe(colours);
    found.push(...(await axeFaults(page)).map((fault) => `${name}, ${size}, ${colours}: ${fault}`));
  }
  return found;
}

const scenes = {
  'half built': async () => openDemo(stage.site, 'half-built'),
  'half built and halted': async () => {
    const build = await openDemo(stage.site, 'half-built');
    await build.send('left', 'halt', { why: 'pin fell' });
    await build.send('left', 'acknowledge-halt', { crew: 'left', people: 6, of: 7 });
    return build;
  },
  empty: async () => openBuild(stage.site, { kind: 'empty' }),
} as const;

it.each(Object.entries(scenes))(
  'has no page with a fault that axe can find, day or night, on a desk or a phone: %s',
  async (_, make) => {
    const build = await make();
    const found: string[] = [];
    const look = async (name: string, address: string): Promise<void> => {
      const page = await stage.pages.open(address);
      await settled(page);
      found.push(...(await looked(page, name)));
      await page.close();
    };
    const crews = build.links.flatMap(({ crew }) =>
      crew === 'left' || crew === 'rollers' ? [crew] : [],
    );
    for (const who of [...crews, 'log', 'inspector', 'commander', 'leader'])
      await look(who, build.page(who));
    for (const below of leaderPages) {
      await look(below, build.page('leader').replace('/leader', `/leader/${below}`));
    }
    expect(found).toEqual([]);
  },
);

it.each(['day', 'night'] as const)(
  'has no fault that axe can find on a card asleep, on sheets laid over it, and on the start page, by %s',
  async (colours) => {
    const build = await openDemo(stage.site, 'half-built');
    const context = await stage.pages.device({ size: 'phone', colours });
    await context.clock.install();
    const page = await stage.pages.open(build.page('left'), { context });
    for (const button of ['Stopped', 'Part done', '7 fit', 'Hurt, short, other']) {
      await page.getByRole('button', { name: button, exact: true }).click();
      await page.getByRole('dialog').waitFor();
      expect(await axeFaults(page), button).toEqual([]);
      await page.keyboard.press('Escape');
      await context.clock.fastForward(1000);
    }
    await context.clock.fastForward('01:01');
    await page.getByRole('button', { name: 'Wake the card' }).waitFor();
    expect(await axeFaults(page)).toEqual([]);

    for (const address of [
      '/',
      `/#${stage.site.host}`,
      `/b/${build.build}/chief#unknown-secret-0000`,
    ]) {
      const start = await stage.pages.open(stage.site.origin + address, { context });
      await start.getByRole('heading', { level: 1 }).waitFor();
      expect(await axeFaults(start), address).toEqual([]);
    }
  },
);
