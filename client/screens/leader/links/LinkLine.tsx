import { useState } from 'react';
import { crewLabel } from '#domain/progress/words.ts';
import type { LinkInfo } from '#shared/wire.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { words } from '../../../words/words.ts';

type Props = {
  readonly link: LinkInfo;
  readonly onRenew: () => void;
  readonly onWithdraw: () => void;
};

/** One link: for whom, which page; renewed by one press, withdrawn by two. */
export function LinkLine({ link, onRenew, onWithdraw }: Props) {
  const { state, you } = useBuild();
  const [asking, setAsking] = useState(false);
  const texts = words.links;
  const { name, role, crew, withdrawn } = link;
  // Two leaders of one name cannot be told apart here: better one warning too many.
  const own = role === 'leader' && name === you.name;
  return (
    <li className="link-item">
      <span>
        {withdrawn ? <s>{name}</s> : <strong>{name}</strong>}{' '}
        <span className="second">
          {words.pages[role]}
          {crew === undefined ? '' : `, ${crewLabel(state, crew)}`}
          {withdrawn ? `, ${texts.withdrawn}` : ''}
        </span>
      </span>
      {withdrawn ? null : (
        <span className="row">
          {asking ? (
            <>
              {own ? <span className="warn">{texts.sureOwn}</span> : null}
              <Button aria-label={texts.sureOne(name)} onClick={onWithdraw}>
                {texts.sure}
              </Button>
              <Button onClick={() => setAsking(false)}>{texts.leave}</Button>
            </>
          ) : (
            <>
              {own ? null : (
                <Button look="plain" aria-label={texts.renewOne(name)} onClick={onRenew}>
                  {texts.renew}
                </Button>
              )}
              <Button
                look="plain"
                aria-label={texts.withdrawOne(name)}
                onClick={() => setAsking(true)}
              >
                {texts.withdraw}
              </Button>
            </>
          )}
        </span>
      )}
    </li>
  );
}
