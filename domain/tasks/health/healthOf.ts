import { refuseFaultyWork } from '../../schedule/refuseFaultyWork.ts';
import type { Work } from '../work.ts';
import { danglingFindings } from './dangling.ts';
import { delayFindings } from './delay.ts';
import { endFindings } from './ends.ts';
import { examine, type HealthOptions } from './examined.ts';
import type { Finding } from './finding.ts';
import { holdFindings } from './holds.ts';
import { longFindings } from './long.ts';
import { manningFindings, nobodyFindings } from './manned.ts';
import { sources } from './marks.ts';
import { timeFindings } from './time.ts';
import { waitFindings } from './waits.ts';

const order = { stops: 0, mend: 1, look: 2 };

/**
 * What makes the plan of an order of work hard to trust, the gravest first: each finding names its tasks and says what
 * to do. Tasks done are no longer looked at. Work that is faulty by itself (a loop, things doubled or missing) has that
 * as its only finding. The checks and marks are those of US GAO-16-89G (2015) and DCMA-EA PAM 200.1 (2012), with
 * working days restated in minutes; `marks.ts` says how.
 */
export function healthOf(work: Work, options: HealthOptions): Finding[] {
  const faulty = refuseFaultyWork(work);
  if (faulty) {
    const { sentence, of = [] } = faulty;
    const source = sources.scheduler;
    return [{ kind: 'faulty', weight: 'stops', tasks: [...of], sentence, source }];
  }
  const examined = examine(work, options);
  return [
    ...manningFindings(examined),
    ...endFindings(examined),
    ...danglingFindings(examined),
    ...delayFindings(examined),
    ...holdFindings(examined),
    ...waitFindings(examined),
    ...longFindings(examined),
    ...nobodyFindings(examined),
    ...timeFindings(examined),
  ].sort((one, other) => order[one.weight] - order[other.weight]);
}
