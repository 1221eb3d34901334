import type { HeldNow } from '#domain/bridge/statics/heldNow.ts';
import { bearerWords, centreWords, forceWords } from '../../../drawing/launchText.ts';
import { kilonewtons, metres } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** What holds a bridge that has stopped, in sentences: the margin first, then what it rests on, then whether it rolls. */
export function HoldsNow({ held }: { readonly held: HeldNow }) {
  const said = words.launch.stopped;
  const tips = held.margin < 0;
  const rests = held.reactions
    .map((one) => `${bearerWords(one)} ${forceWords(one.newtons)}`)
    .join(', ');
  return (
    <div role="status" className="stack">
      <p className={`bridge-answer ${tips ? 'warn' : ''}`}>
        {tips
          ? said.tipsNow(metres(-held.margin))
          : said.holds(centreWords(held.margin, held.landed))}
      </p>
      <p className={held.mayGoOn < 0 ? 'warn' : ''}>
        {tips ? null : said.holdsMore(metres(held.margin))}{' '}
        {held.mayGoOn < 0 ? said.notOn(metres(-held.mayGoOn)) : said.goOn(metres(held.mayGoOn))}
      </p>
      <p>{said.bears(rests)}</p>
      <p className={held.push && held.push.holdBack > 0 ? 'warn' : ''}>{rollWords(held)}</p>
    </div>
  );
}

function rollWords({ push }: HeldNow): string {
  const said = words.launch.stopped;
  if (push === null) return said.runsUnknown;
  return push.holdBack > 0 ? said.runs(kilonewtons(push.holdBack)) : said.stays;
}
