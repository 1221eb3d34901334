import { useBuild } from '../data/useBuild.ts';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';
import { useSay } from './useSay.ts';
import { useUnheardHalt } from './useUnheardHalt.ts';

/** Stops everyone on site, by one press: a false halt is cheap, a late one is not. */
export function HaltButton() {
  const { told } = useBuild();
  const { said, say } = useSay();
  const unheard = useUnheardHalt();
  return (
    <div className="halt-call no-print">
      <Button look="accent" className="halt-button" onClick={() => void say('halt', { why: '' })}>
        {told.halt ? words.halt.again : words.halt.call}
      </Button>
      <span role="status" className="halt-said">
        {said?.state === 'sending' && !unheard ? words.halt.sending : ''}
        {said?.state === 'refused' ? words.said.refused(said.sentence) : ''}
        {unheard ? <strong className="warn">{words.halt.unheard}</strong> : null}
      </span>
    </div>
  );
}
