/** Workers and pages are loaded as bundles, never from source, so that tests run what users run. */
export async function setup(): Promise<void> {
  const { ensureBuilt } = await import('../../server/start/build.mjs');
  await ensureBuilt();
}
