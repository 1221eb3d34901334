import type { Locator, Page } from 'playwright-core';

/** A chief's card takes no second press so soon after a first: milliseconds, a little more than the card's own pause. */
const rest = 1000;

const lastTap = new WeakMap<Page, number>();

/** Presses a button of a chief's card as a hand does: with a rest since the last press on the same card. */
export async function tap(button: Locator): Promise<void> {
  const page = button.page();
  await button.waitFor();
  const ready = (lastTap.get(page) ?? 0) + rest;
  await page.waitForFunction((time) => Date.now() >= time, ready);
  await button.click();
  lastTap.set(page, Date.now());
}

/** Milliseconds since 1970 at which something happened in a page. */
export type Moment = () => Promise<number>;

/** Notes when a page next hears a press. */
export async function nextPress(page: Page): Promise<Moment> {
  await page.evaluate(() => {
    const pressed = new Promise<number>((resolve) => {
      addEventListener('click', () => resolve(Date.now()), { capture: true, once: true });
    });
    Object.assign(globalThis, { pressed });
  });
  return () => page.evaluate(() => (globalThis as unknown as { pressed: number }).pressed);
}

/** Notes when a text first stands in a page. A page that is loaded anew forgets it, and the answer is rejected. */
export async function firstSight(page: Page, text: string): Promise<Moment> {
  await page.evaluate((wanted) => {
    const seen = new Promise<number>((resolve) => {
      const look = (): void => {
        if (!document.body.textContent?.includes(wanted)) return;
        observer.disconnect();
        resolve(Date.now());
      };
      const observer = new MutationObserver(look);
      observer.observe(document.body, { subtree: true, childList: true, characterData: true });
      look();
    });
    Object.assign(globalThis, { seen });
  }, text);
  return async () => {
    const at = await page.evaluate(() => (globalThis as unknown as { seen?: number }).seen);
    if (at === undefined) throw new Error(`the page was loaded anew before "${text}" stood in it`);
    return at;
  };
}
