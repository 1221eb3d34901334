import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

/**
 * What axe finds wrong with a page as it stands, one sentence each; none when it is accessible as far as axe can see.
 * The page's rules forbid scripts from elsewhere, so axe is run from outside instead of being put into the page.
 */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(async (): Promise<AxeResults> => {
    const { axe: there } = globalThis as unknown as { axe: typeof axe };
    return await there.run(document, { resultTypes: ['violations'] });
  });
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help}: ${target} ${failureSummary ?? ''}`),
  );
}
