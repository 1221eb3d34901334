import type { Role } from '#domain/progress/command.ts';
import type { LinkInfo, LinkRequest, NewLink } from '#shared/wire.ts';
import type { StoredLink } from '../ledger/ledger.ts';
import type { Clock, Ids } from '../ports.ts';
import { secretHash } from './caller.ts';

/** A link to keep, and the same link as it is shown once, with its secret. */
export type MadeLink = { readonly stored: StoredLink; readonly shown: NewLink };

/** The page of a link. The secret is the fragment, which browsers never send with a request for a page. */
function pageAddress(build: string, role: Role, secret: string): string {
  return `/b/${build}/${role}#${secret}`;
}

type Ports = { readonly clock: Clock; readonly ids: Ids };

function linkWith(
  { clock, ids }: Ports,
  secret: string,
  about: Pick<StoredLink, 'build' | 'role' | 'name' | 'crew'>,
): StoredLink {
  const madeAt = clock.now().toISOString();
  return { id: ids.short(), ...about, secretHash: secretHash(secret), madeAt, withdrawnAt: null };
}

/** Makes a link for a role in one build. */
export function makeLink(
  ports: Ports,
  build: string,
  { role, name, crew = null }: Omit<LinkRequest, 'crew'> & { readonly crew?: string | null },
): MadeLink {
  const secret = ports.ids.secret();
  const stored = linkWith(ports, secret, { build, role, name, crew });
  return { stored, shown: { ...linkInfo(stored), address: pageAddress(build, role, secret) } };
}

/** Makes the host's link of this server and its start page with the secret. */
export function makeHostLink(ports: Ports): {
  readonly stored: StoredLink;
  readonly address: string;
} {
  const secret = ports.ids.secret();
  const about = { build: null, role: 'host', name: 'Host', crew: null } as const;
  return { stored: linkWith(ports, secret, about), address: `/#${secret}` };
}

/** A link as the leader's list shows it. */
export function linkInfo({ id, role, name, crew, withdrawnAt }: StoredLink): LinkInfo {
  return {
    id,
    role: role as Role,
    name,
    ...(crew !== null && { crew }),
    withdrawn: withdrawnAt !== null,
  };
}

/** The links that a new build starts with: everyone who has a page, each chief by the crew's name. */
export function firstLinks(
  crews: readonly {
    readonly id: string;
    readonly name: string;
    readonly attached: boolean;
    readonly chief?: string | undefined;
  }[],
): LinkRequest[] {
  return [
    { role: 'leader', name: 'Leader' },
    { role: 'log', name: 'Log keeper' },
    ...crews
      .filter(({ attached }) => !attached)
      .map(
        ({ id, name, chief }): LinkRequest => ({ role: 'chief', name: chief ?? name, crew: id }),
      ),
    { role: 'inspector', name: 'Inspector' },
    { role: 'commander', name: 'Commander' },
  ];
}
