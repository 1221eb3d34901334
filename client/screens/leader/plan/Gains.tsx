import { workAsTold } from '#domain/progress/views/asTold.ts';
import { pastOf } from '#domain/progress/views/past.ts';
import { crewLabel } from '#domain/progress/words.ts';
import { usePlanning } from '../../../data/planning/usePlanning.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { Button } from '../../../parts/Button.tsx';
import { iso, minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';

/** What one more person in each crew would gain, from planning everything again with each; on this device. */
export function Gains() {
  const { state, now } = useBuild();
  const { planning, begin, end } = usePlanning();
  const texts = words.reasons;
  const { step, progress, gains } = planning;
  const ask = (): void =>
    begin({
      kind: 'gains',
      work: workAsTold(state),
      past: pastOf(state, iso(now)),
      shape: state.plan?.shape ?? 'pert',
    });
  return (
    <div className="stack">
      <p className="second reading">{texts.gainsMore}</p>
      <div className="row">
        <Button disabled={step === 'working'} onClick={ask}>
          {step === 'none' ? texts.gainsAsk : texts.gainsAgain}
        </Button>
        {step === 'working' ? (
          <>
            <progress
              max={1}
              value={progress ? progress.done / progress.of : undefined}
              aria-label={texts.gains}
            />
            <Button onClick={end}>{texts.gainsStop}</Button>
          </>
        ) : null}
      </div>
      <div role="status">
        {step === 'working' && progress ? (
          <p>{texts.gainsFar(Math.min(progress.done + 1, progress.of), progress.of)}</p>
        ) : null}
        {step === 'failed' ? <p className="warn">{texts.gainsFailed}</p> : null}
        {gains ? (
          <ul>
            {[...gains]
              .sort((one, other) => other.minutesEarlier - one.minutesEarlier)
              .map(({ crew, minutesEarlier }) => (
                <li key={crew}>
                  {Math.round(minutesEarlier) > 0
                    ? texts.gainOne(crewLabel(state, crew), minutes(minutesEarlier))
                    : texts.gainNone(crewLabel(state, crew))}
                </li>
              ))}
          </ul>
        ) : null}
      </div>
    </div>
  );
}
