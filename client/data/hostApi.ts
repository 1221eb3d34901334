import type { NewLink } from '#shared/wire.ts';
import type { Answer, Api } from './api.ts';

/** One build in the host's list. */
export type BuildListed = {
  readonly build: string;
  readonly name: string;
  /** ISO 8601 UTC. */
  readonly start: string;
  readonly zone: string;
};

/** A build that was just started, and the links of its people. */
export type BuildStarted = { readonly build: string; readonly links: readonly NewLink[] };

/** GET /api/builds, with the host's secret. */
export function listBuilds(
  api: Api,
): Promise<Answer<{ readonly builds: readonly BuildListed[] }>> {
  return api.get('/api/builds');
}

/** POST /api/demo, with the host's secret. */
export function startDemo(api: Api): Promise<Answer<BuildStarted>> {
  return api.post('/api/demo', {});
}
