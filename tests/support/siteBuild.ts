import { randomBytes } from 'node:crypto';
import type { BuildState } from '#domain/progress/state.ts';
import type { Change } from '#domain/tasks/change.ts';
import type { CommandRequest, NewLink, Proposal, Receipt, Snapshot } from '#shared/wire.ts';
import type { WireKind } from '#shared/wireBodies.ts';
import type { OpenedBuild, OpenRequest } from '#shared/wireBuilds.ts';
import type { Site } from './site.ts';

/** A build on a running server, and what its people do there without a browser. Roles are named, chiefs by their crew. */
export type SiteBuild = {
  readonly build: string;
  readonly links: readonly NewLink[];
  /** The whole address of somebody's page. */
  page(who: string): string;
  secret(who: string): string;
  /** Sends a command as it happens now. Throws when it is refused. */
  send(who: string, kind: WireKind, body: unknown, more?: Partial<CommandRequest>): Promise<number>;
  /** Plans with these changes and accepts the plan. */
  plan(changes?: readonly Change[]): Promise<void>;
  state(): Promise<BuildState>;
  /** Tells these tasks done, by the crews that the plan gives them. */
  finish(...tasks: readonly string[]): Promise<void>;
  /** Tells all that a task comes after done, in planned order: no hold and no keep-off task may be among it. */
  finishBefore(task: string): Promise<void>;
};

/** A new demo build: half built, or fresh and still to be planned. */
export async function openDemo(site: Site, how: 'fresh' | 'half-built'): Promise<SiteBuild> {
  return opened(site, await site.ask<OpenedBuild>('POST', '/api/demo', site.host, { how }));
}

/** A new build that starts at this minute: from tables, from a bridge, or empty. */
export async function openBuild(site: Site, source: OpenRequest['source']): Promise<SiteBuild> {
  const start = new Date(Math.floor(Date.now() / 60_000) * 60_000);
  const request: OpenRequest = {
    id: mint(),
    name: 'Test crossing',
    unit: '1 Platoon',
    start: start.toISOString(),
    askedFor: new Date(start.getTime() + 120 * 60_000).toISOString(),
    zone: 'UTC',
    confidence: 0.9,
    source,
  };
  return opened(site, await site.ask<OpenedBuild>('POST', '/api/builds', site.host, request));
}

function opened(site: Site, { status, json }: { status: number; json: OpenedBuild }): SiteBuild {
  if (status !== 201) throw new Error(`no build: ${JSON.stringify(json)}`);
  const { build, links } = json;
  const linkOf = (who: string): NewLink => {
    const link = links.find(({ role, crew }) => (crew ?? role) === who);
    if (!link) throw new Error(`the build has no link for ${who}`);
    return link;
  };
  const secret = (who: string): string => linkOf(who).address.split('#')[1] ?? '';
  const path = `/api/builds/${build}`;

  const self: SiteBuild = {
    build,
    links,
    page: (who) => site.origin + linkOf(who).address,
    secret,
    send: async (who, kind, body, more = {}) => {
      const now = new Date().toISOString();
      const request = { id: mint(), kind, body, happenedAt: now, sentAt: now, ...more };
      const { json } = await site.ask<Receipt>('POST', `${path}/commands`, secret(who), request);
      if (json.outcome !== 'recorded') throw new Error(`${who} ${kind}: ${JSON.stringify(json)}`);
      return json.entry;
    },
    plan: async (changes = []) => {
      const asked = await site.ask<Proposal>('POST', `${path}/proposals`, secret('leader'), {
        changes,
      });
      if (asked.status !== 201) throw new Error(`no plan: ${JSON.stringify(asked.json)}`);
      await self.send('leader', 'accept-plan', { proposal: asked.json.proposal });
    },
    state: async () => (await site.ask<Snapshot>('GET', path, secret('leader'))).json.state,
    finish: async (...tasks) => {
      const { plan } = await self.state();
      for (const task of tasks) {
        const planned = plan?.tasks.find((one) => one.task === task);
        if (!planned) throw new Error(`${task} is not planned`);
        for (const { crew } of planned.crews)
          await self.send('log', 'tell-finished', { task, crew });
      }
    },
    finishBefore: async (task) => self.finish(...openBefore(await self.state(), task)),
  };
  return self;
}

/** What a task comes after, however far back, and is not done: in the order of the plan. */
function openBefore({ plan, tasks, work }: BuildState, task: string): string[] {
  const before = new Set<string>();
  const waiting = [task];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    for (const { from } of work.links.filter(({ to }) => to === at)) {
      if (!before.has(from)) waiting.push(from);
      before.add(from);
    }
  }
  return (plan?.tasks ?? [])
    .map((planned) => planned.task)
    .filter((id) => before.has(id) && tasks[id]?.status !== 'done');
}

/** An id as a device mints it. */
function mint(): string {
  return randomBytes(16).toString('hex');
}
