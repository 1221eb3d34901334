import { useState } from 'react';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { upperFirst } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { useDraft } from '../draft/DraftContext.ts';
import { useLeader } from '../useLeader.ts';

/** A fresh plan that the server found worth its changes: look at it beside the one in force, or not now. */
export function OfferNotice() {
  const { build, api, offer } = useBuild();
  const { trial, changes } = useDraft();
  const { go } = useLeader();
  const [declined, setDeclined] = useState<string | null>(null);
  const texts = words.plan;
  // Whoever is trying changes, or looks at a plan, is not to be disturbed.
  const busy = changes.length > 0 || trial.state.step === 'planning' || trial.state.step === 'made';
  if (!offer || busy || declined === offer.proposal) return null;
  const { proposal, gain } = offer;

  function decline(): void {
    setDeclined(proposal);
    void api.remove(`/api/builds/${build}/proposals/${proposal}`);
  }

  return (
    <section className="notice stack offer" aria-label={texts.offer}>
      <p>{texts.offerMore(upperFirst(gain))}</p>
      <div className="row">
        <Button
          look="solid"
          onClick={() => {
            void trial.show(proposal);
            go('plan');
          }}
        >
          {texts.offerLook}
        </Button>
        <Button onClick={decline}>{texts.offerNot}</Button>
      </div>
    </section>
  );
}
