import type { Kit } from '../../kit/kit.ts';
import type { Proposal } from './proposal.ts';

const longestSource = 400;
const longestTitle = 80;
const suffix = ', own minutes';

/**
 * An own copy of a kit under a new name with the minutes of the proposals that the leader accepted. Its title says that
 * they are own ones; what the kit was and on how many builds they rest is said in its `source`. All else, its limits
 * before all, stays as it was.
 */
export function ownKit(kit: Kit, accepted: readonly Proposal[], name: string): Kit {
  const minutes = new Map(accepted.map((proposal) => [proposal.task, proposal.minutes]));
  const builds = Math.max(0, ...accepted.map((proposal) => proposal.builds));
  const own = `Own copy of ${kit.name}: minutes of ${accepted.length} tasks from ${builds} own ${
    builds === 1 ? 'build' : 'builds'
  }. `;
  return {
    ...kit,
    name,
    title: ownTitle(kit.title),
    source: `${own}${kit.source}`.slice(0, longestSource),
    order: kit.order.map((template) => ({
      ...template,
      minutes: minutes.get(template.id) ?? template.minutes,
    })),
  };
}

/** A list of kits shows titles: two of one title could not be told apart. */
function ownTitle(title: string): string {
  const whole = title.endsWith(suffix) ? title.slice(0, -suffix.length) : title;
  return `${whole.slice(0, longestTitle - suffix.length)}${suffix}`;
}
