import type { LinkRequest, NewLink } from '#shared/wire.ts';
import type { BuildListed, DemoRequest, OpenedBuild } from '#shared/wireBuilds.ts';
import type { Answer, Api } from './api.ts';

/** GET /api/builds, with the host's secret. */
export function listBuilds(api: Api): Promise<Answer<{ readonly builds: readonly BuildListed[] }>> {
  return api.get('/api/builds');
}

/** POST /api/demo, with the host's secret: half built, or fresh and still to be planned. */
export function startDemo(
  api: Api,
  how: NonNullable<DemoRequest['how']>,
): Promise<Answer<OpenedBuild>> {
  const request: DemoRequest = { how };
  return api.post('/api/demo', request);
}

/** POST /api/builds/:build/links, with the host's secret: a way in for a leader who lost theirs. */
export function makeLeaderLink(api: Api, build: string): Promise<Answer<NewLink>> {
  const request: LinkRequest = { role: 'leader', name: 'Leader' };
  return api.post(`/api/builds/${build}/links`, request);
}
