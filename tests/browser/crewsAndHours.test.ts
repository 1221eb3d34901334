import { expect, it } from 'vitest';
import { type Size, sizes } from '#tests/support/pages.ts';
import { openDemo } from '#tests/support/siteBuild.ts';
import { raiseStage } from '#tests/support/siteStage.ts';

const stage = raiseStage();

/** The time of day so many minutes after another, as "17:05". */
function later(time: string, minutes: number): string {
  const [hours = 0, rest = 0] = time.split(':').map(Number);
  const at = (hours * 60 + rest + minutes) % 1440;
  return [Math.floor(at / 60), at % 60].map((part) => String(part).padStart(2, '0')).join(':');
}

it.each(Object.keys(sizes) as Size[])(
  'takes a rest, people lent and a later strength, plans again with them, and the plan accepted keeps to them (%s)',
  async (size) => {
    const build = await openDemo(stage.site, 'half-built');
    const page = await stage.pages.open(`${build.page('leader').replace('#', '/hours#')}`, {
      size,
    });
    await page.getByRole('heading', { name: 'Crews and hours' }).waitFor();
    const { start } = await build.state();
    const now = new Date().toISOString().slice(11, 16);
    const crew = (name: string) =>
      page.getByRole('listitem').filter({ has: page.getByRole('heading', { name }) });
    const left = crew('Left girder, 7 people');
    await left.getByText('No rests entered.').first().waitFor();
    await left.getByRole('img', { name: /^Left girder, people over time: 7 people/ }).waitFor();
    await left.locator('summary').click();
    const form = left.getByRole('form', { name: 'Change the hours of Left girder' });

    // By keyboard: the new line has the focus, and what is wrong is marked where it stands.
    await form.getByRole('button', { name: 'Add a rest' }).press('Enter');
    const rest = form.getByRole('group', { name: 'Rest 1' });
    await page.keyboard.type(later(now, 20));
    const add = form.getByRole('button', { name: 'Add to the changes' });
    await add.click();
    await form.getByText('Nothing was added: mend what is marked above.').waitFor();
    await rest.getByText('Enter a time, such as 17:00.').waitFor();
    await page.keyboard.type(later(now, 80));

    await form.getByRole('button', { name: 'Lend people' }).press('Enter');
    const lent = form.getByRole('group', { name: 'Lent 1' });
    await lent.getByLabel('To crew').selectOption({ label: 'Right girder' });
    await lent.getByLabel('How many').fill('9');
    await lent.getByLabel('From', { exact: true }).fill(later(now, 90));
    await lent.getByLabel('To', { exact: true }).fill(later(now, 100));
    await form.getByRole('button', { name: 'Add a change of strength' }).press('Enter');
    const step = form.getByRole('group', { name: 'Change of strength 1' });
    await step.getByLabel('From', { exact: true }).fill(later(now, 110));
    await step.getByLabel('People from then on').fill('6');
    // Nine of seven cannot go.
    await add.click();
    await form.getByText(/^Left girder would have 2 people more lent or resting/).waitFor();
    await lent.getByLabel('How many').fill('1');
    await add.click();
    await form.getByText('Added to the changes.').waitFor();
    await left.getByText(/^There for the whole build\. Rests .* Lends 1 person to Right/).waitFor();
    await crew('Right girder')
      .getByText(/Has 1 person of Left girder/)
      .waitFor();
    const wide = await page.evaluate(
      () => document.documentElement.scrollWidth > window.innerWidth,
    );
    expect(wide).toBe(false);

    await page.getByRole('link', { name: 'Look at them and plan again' }).click();
    await page.getByText(/^Left girder: rests .*, lends 1 person to Right .*, 6 people/).waitFor();
    await page.getByRole('button', { name: 'Plan again' }).click();
    const both = page.getByRole('region', { name: 'As it stands, and as it would be' });
    await both.getByRole('heading', { name: /later/ }).waitFor();
    await both.getByRole('region', { name: 'What moves' }).getByRole('listitem').first().waitFor();
    expect((await build.state()).work.crews.find(({ id }) => id === 'left')).not.toHaveProperty(
      'rests',
    );

    await page.getByRole('button', { name: 'Accept this plan' }).click();
    await expect.poll(async () => (await build.state()).planCount).toBe(2);
    // The board says when they rest.
    if (size === 'phone')
      await page.getByRole('combobox', { name: 'Crew' }).selectOption({ label: 'Left girder' });
    await page
      .getByRole('list', { name: 'Left girder', exact: true })
      .getByText(`All rest, ${later(now, 20)} to ${later(now, 80)}.`)
      .waitFor();
    const { work, plan } = await build.state();
    const girder = work.crews.find(({ id }) => id === 'left');
    expect(girder?.lent).toMatchObject([{ crew: 'right', people: 1 }]);
    expect(girder?.strength).toMatchObject([{ people: 6 }]);
    const [eats] = girder?.rests ?? [];
    const clock = (minute = 0) =>
      new Date(Date.parse(start) + minute * 60_000).toISOString().slice(11, 16);
    expect([clock(eats?.from), clock(eats?.to)]).toEqual([later(now, 20), later(now, 80)]);
    const begun = plan?.tasks.filter(
      ({ crews, start: begins }) =>
        crews.some((one) => one.crew === 'left' && one.people > 0) &&
        begins >= eats!.from &&
        begins < eats!.to,
    );
    expect(begun).toEqual([]);
  },
);
