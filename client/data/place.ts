import { Role } from '#domain/progress/command.ts';

/** Where the browser is: a page of one build by one link, or the start page (perhaps with the host's secret). */
export type Place =
  | {
      readonly page: Role;
      readonly build: string;
      readonly secret: string;
      /** What stands behind the page in the address: the leader's ("ground", "work/bay-9-left"), the commander's ("forecast"); nobody else has pages below. */
      readonly sub?: string;
    }
  | { readonly page: 'start'; readonly secret: string }
  | { readonly page: 'unknown'; readonly secret: string };

const roles: readonly string[] = Role.anyOf.map((one) => one.const);

/** Reads an address. The secret is the fragment, which browsers never send to a server. */
export function placeOf(path: string, fragment: string): Place {
  const secret = fragment.replace(/^#/, '');
  if (path === '/' || path === '') return { page: 'start', secret };
  const [, build, page, sub] =
    /^\/b\/([A-Za-z0-9._-]+)\/([a-z]+)(?:\/([A-Za-z0-9._/-]*))?$/.exec(path) ?? [];
  if (build && page && roles.includes(page)) {
    if (!sub) return { page: page as Role, build, secret };
    const below = sub.replace(/\/$/, '');
    if (page === 'leader' || (page === 'commander' && below === 'forecast')) {
      return { page, build, secret, sub: below };
    }
  }
  return { page: 'unknown', secret };
}

/** Address of a page, with the secret so that it survives moving about and reloading. */
export function addressOf(place: Place): string {
  const fragment = place.secret === '' ? '' : `#${place.secret}`;
  if (place.page === 'start' || place.page === 'unknown') return `/${fragment}`;
  const below = place.sub ? `/${place.sub}` : '';
  return `/b/${place.build}/${place.page}${below}${fragment}`;
}

/** Under what name the device keeps what belongs to the link of a place. */
export function linkKeyOf(place: Place): string {
  if (place.secret === '') return 'start';
  return keyOf('build' in place ? place.build : 'host', place.secret);
}

/** Under this name the device keeps what belongs to one link; the secret itself is kept nowhere. */
export function keyOf(build: string, secret: string): string {
  let mixed = 0x811c9dc5;
  for (const letter of secret) {
    mixed = Math.imul(mixed ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  return `${build}.${mixed.toString(16).padStart(8, '0')}`;
}
