import { useBuild } from '../data/useBuild.ts';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';
import { useSay } from './useSay.ts';

/** Stops everyone on site, by one press: a false halt is cheap, a late one is not. */
export function HaltButton() {
  const { state } = useBuild();
  const { said, say } = useSay();
  return (
    <div className="halt-call no-print">
      <Button look="accent" className="halt-button" onClick={() => void say('halt', { why: '' })}>
        {state.halt ? words.halt.again : words.halt.call}
      </Button>
      <span role="status" className="halt-said">
        {said?.state === 'sending' ? words.halt.sending : ''}
        {said?.state === 'refused' ? words.said.refused(said.sentence) : ''}
        {said?.state === 'no-answer' ? words.halt.noAnswer : ''}
      </span>
    </div>
  );
}
