import { useLocation } from 'wouter';
import { addressOf, type Place, placeOf } from '../../data/place.ts';
import { useBuild } from '../../data/useBuild.ts';

/** Where on the leader's page one is, and how to get about. */
export type LeaderWay = {
  /** "", "ground", "work" ... */
  readonly section: string;
  /** What stands behind the section in the address: a task's id. */
  readonly of: string | null;
  readonly to: (sub: string) => Place;
  readonly go: (sub: string) => void;
  readonly toTask: (task: string) => Place;
};

export function useLeader(): LeaderWay {
  const { build, secret } = useBuild();
  const [path, navigate] = useLocation();
  const place = placeOf(path, `#${secret}`);
  const sub = 'sub' in place ? (place.sub ?? '') : '';
  const [section = '', of = null] = sub.split('/');
  const to = (next: string): Place => ({
    page: 'leader',
    build,
    secret,
    ...(next !== '' && { sub: next }),
  });
  return {
    section,
    of,
    to,
    go: (next) => navigate(addressOf(to(next))),
    toTask: (task) => to(`work/${task}`),
  };
}
