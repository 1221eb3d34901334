import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

type Box = {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Where controls stand, in CSS pixels. */
async function boxesOf(controls: Locator): Promise<Box[]> {
  return controls.evaluateAll((elements) =>
    elements.map((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      const name = element.getAttribute('aria-label') ?? element.textContent ?? '';
      return { name, x, y, width, height };
    }),
  );
}

/** Pixels of nothing between two boxes; 0 when they touch or overlap. */
function gap(one: Box, other: Box): number {
  const across = Math.max(other.x - (one.x + one.width), one.x - (other.x + other.width), 0);
  const down = Math.max(other.y - (one.y + one.height), one.y - (other.y + other.height), 0);
  return Math.max(across, down);
}

/** What is wrong with the ticks of a card: too low, or something else to press too near. */
async function tightTicks(page: Page): Promise<string[]> {
  const tick = page.getByRole('button', {
    name: /^(Done (?!already)|Start |Go on |Off, |Loads down, )/,
  });
  await tick.first().waitFor();
  const ticks = await boxesOf(tick);
  const all = await boxesOf(page.getByRole('button').filter({ visible: true }));
  return ticks.flatMap((one) => {
    const low = one.height < 120 ? [`${one.name} is ${one.height} high`] : [];
    const near = all
      .filter(({ x, y }) => x !== one.x || y !== one.y)
      .filter((other) => gap(one, other) < 50)
      .map((other) => `${one.name} is ${gap(one, other)} from ${other.name}`);
    return [...low, ...near];
  });
}

it('gives mittens ticks at least 120 pixels high with 50 pixels around them', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const context = await stage.pages.device({ size: 'phone' });
  const open = (crew: string) => stage.pages.open(build.page(crew), { context });

  // Started and to be ended, and two half-crews of one crew at once.
  await build.finish('bay-9-left', 'bay-9-right', 'secure-4');
  await build.send('left', 'tell-started', { task: 'bay-10-left', crew: 'left' });
  await build.send('left', 'tell-started', { task: 'approach-near-left', crew: 'left' });
  const left = await open('left');
  await left.getByRole('button', { name: 'Done Approach, near bank, left half' }).waitFor();
  expect(await tightTicks(left)).toEqual([]);
  // Not begun.
  const bracing = await open('bracing');
  await bracing.getByRole('button', { name: 'Start Brace bay 9' }).waitFor();
  expect(await tightTicks(bracing)).toEqual([]);
  // People told off, before a move.
  await build.finishBefore('ready-5');
  const right = await open('right');
  await right.getByRole('button', { name: /^Off, 6 of 7/ }).waitFor();
  expect(await tightTicks(right)).toEqual([]);
  // Heads counted in a halt, and what was stopped by it.
  await build.send('left', 'halt', { why: '' });
  await right.getByRole('button', { name: /^Loads down, 7 of 7 clear/ }).waitFor();
  expect(await tightTicks(left)).toEqual([]);
});

it('lets the card sleep untouched, and a pocket ticks nothing until it is woken', async () => {
  const build = await openDemo(stage.site, 'half-built');
  const context = await stage.pages.device({ size: 'phone' });
  await context.clock.install();
  const page = await stage.pages.open(build.page('left'), { context });
  const done = page.getByRole('button', { name: 'Done Bay 9, left side' });
  await done.waitFor();
  const { number } = await build.state();

  await context.clock.fastForward('01:01');
  await page.getByText('Asleep, so that a pocket cannot tick.').waitFor();
  expect(await done.isDisabled()).toBe(true);
  // A halt is taken also from a card asleep.
  expect(await page.getByRole('button', { name: 'Halt everyone' }).isDisabled()).toBe(false);

  // Something in the pocket presses the same place again and again: it wakes the card, and that is all.
  const wake = (await page.getByRole('button', { name: 'Wake the card' }).boundingBox())!;
  for (let press = 0; press < 6; press += 1) {
    await page.touchscreen.tap(wake.x + wake.width / 2, wake.y + wake.height / 2);
    await context.clock.fastForward(1000);
  }
  await page.getByText('Asleep, so that a pocket cannot tick.').waitFor({ state: 'detached' });
  const under = await page.evaluate(({ x, y, width, height }) => {
    const places = [0.02, 0.25, 0.5, 0.75, 0.98];
    return places.flatMap((across) =>
      places.map((down) => {
        const there = document.elementFromPoint(x + across * width, y + down * height);
        return there?.closest('button')?.textContent ?? 'nothing to press';
      }),
    );
  }, wake);
  expect(new Set(under)).toEqual(new Set(['nothing to press']));

  await done.tap();
  await page.getByText(/Left girder finished Bay 9, left side \(87\).*in the record/).waitFor();
  expect((await build.state()).number).toBe(number + 1);
});

/** Controls of a page that are less than 48 pixels high or wide. */
async function smallControls(page: Page): Promise<string[]> {
  const controls = page
    .getByRole('button')
    .or(page.getByRole('textbox'))
    .or(page.getByRole('searchbox'))
    .or(page.getByRole('combobox'))
    .filter({ visible: true });
  // Bars of the columns are as high as their minutes; whatever they lead to is in the list of tasks too.
  const drawn = page.getByRole('region', { name: 'Crew columns' }).getByRole('list');
  const bars = new Set((await boxesOf(drawn.getByRole('button'))).map(({ name }) => name));
  const boxes = await boxesOf(controls);
  expect(boxes.length).toBeGreaterThan(0);
  return (
    boxes
      // Out of sight until it has the focus.
      .filter(({ name }) => name !== 'Skip to the page' && !bars.has(name))
      .filter(({ width, height }) => height < 48 || width < 48)
      .map(({ name, width, height }) => `${name}: ${Math.round(width)} x ${Math.round(height)}`)
  );
}

it('gives every control of every page at least 48 pixels each way', async () => {
  const build = await openDemo(stage.site, 'half-built');
  await build.finishBefore('ready-5');
  const leader = build.page('leader');
  const context = await stage.pages.device({ size: 'phone' });
  const small: string[] = [];
  for (const address of [
    ...['left', 'log', 'inspector', 'commander'].map(build.page),
    leader,
    ...['work/move-5', 'work/bay-9-left', 'crews', 'plan', 'report', 'links', 'record'].map(
      (below) => leader.replace('/leader', `/leader/${below}`),
    ),
    `${stage.site.origin}/#${stage.site.host}`,
  ]) {
    const page = await stage.pages.open(address, { context });
    await page.getByRole('contentinfo').waitFor();
    await expect.poll(() => page.locator('[aria-busy="true"]').count()).toBe(0);
    const where = new URL(address).pathname.split('/').slice(3).join('/');
    small.push(...(await smallControls(page)).map((one) => `${where}: ${one}`));
    await page.close();
  }
  expect(small).toEqual([]);
});
