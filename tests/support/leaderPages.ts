import type { Page } from 'playwright-core';

/** Goes to another of the leader's pages by the links at the head; on a phone they stand behind one press. */
export async function toLeaderPage(page: Page, name: string): Promise<void> {
  const pages = page.getByRole('navigation', { name: 'The leader’s pages' });
  const link = pages.getByRole('link', { name, exact: true });
  const open = pages.getByRole('button', { name: /all pages/ });
  await pages.waitFor();
  if (await open.isVisible()) await open.click();
  await link.click();
}
