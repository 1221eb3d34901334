import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { openBrowser } from './browser.ts';
import { type Pages, pagesOf } from './pages.ts';
import { type Site, startSite } from './site.ts';

/** What the browser tests of one file share. Reached only from within a test. */
export type Stage = { readonly site: Site; readonly pages: Pages };

/**
 * One server and one browser for the tests of a file. After each test its pages are closed, and none may have thrown
 * or complained; at the end the server must stop well.
 */
export function raiseStage(): Stage {
  let site: Site | undefined;
  let browser: Browser | undefined;
  let pages: Pages | undefined;

  beforeAll(async () => {
    [site, browser] = await Promise.all([startSite(), openBrowser()]);
    pages = pagesOf(browser);
  });
  afterEach(async () => {
    expect(await pages?.close()).toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
    await site?.stop();
  });

  return {
    get site() {
      return there(site);
    },
    get pages() {
      return there(pages);
    },
  };
}

function there<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('the stage is not up: ask for it within a test');
  return value;
}
