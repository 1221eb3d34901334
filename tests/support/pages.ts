import type { Browser, BrowserContext, Page } from 'playwright-core';

/** The sizes that the pages are driven at: a phone held upright, a laptop. */
export const sizes = {
  phone: { width: 360, height: 780 },
  desktop: { width: 1440, height: 900 },
} as const;
export type Size = keyof typeof sizes;

export type PageOptions = {
  readonly size?: Size;
  /** Another device in the same hand: pages of one context share what the browser keeps. */
  readonly context?: BrowserContext;
  readonly colours?: 'day' | 'night';
};

/** Opens pages of one browser and gathers what they complain of. */
export type Pages = {
  open(address: string, options?: PageOptions): Promise<Page>;
  /** A device of its own. */
  device(options?: Omit<PageOptions, 'context'>): Promise<BrowserContext>;
  /** Closes all pages; the answer is what they wrote to their consoles as errors, and what they threw. */
  close(): Promise<string[]>;
};

/** Requests that fail are part of the tests, and the browser notes each by itself. */
const expected = /^Failed to load resource/;

/** Waits of a page end after this: longer than anything here takes, shorter than a test may last. */
const patience = 15_000;

export function pagesOf(browser: Browser): Pages {
  const contexts: BrowserContext[] = [];
  const complaints: string[] = [];

  const device: Pages['device'] = async ({ size = 'desktop', colours = 'day' } = {}) => {
    const context = await browser.newContext({
      viewport: sizes[size],
      hasTouch: size === 'phone',
      colorScheme: colours === 'night' ? 'dark' : 'light',
      reducedMotion: 'reduce',
      locale: 'en-GB',
    });
    context.setDefaultTimeout(patience);
    contexts.push(context);
    return context;
  };

  return {
    device,
    open: async (address, { context, ...options } = {}) => {
      const page = await (context ?? (await device(options))).newPage();
      page.on('pageerror', (error) => complaints.push(`threw: ${error.stack ?? error.message}`));
      page.on('console', (message) => {
        if (message.type() === 'error' && !expected.test(message.text())) {
          complaints.push(`wrote: ${message.text()}`);
        }
      });
      await page.goto(address);
      return page;
    },
    close: async () => {
      await Promise.all(contexts.splice(0).map((context) => context.close()));
      return complaints.splice(0);
    },
  };
}
