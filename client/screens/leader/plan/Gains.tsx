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
  const gaining = [...(gains ?? [])].sort((a, b) => b.minutesEarlier - a.minutesEarlier);
  const earlier = gaining.filter((one) => Math.round(one.minutesEarlier) > 0);
  const none = gaining.filter((one) => Math.round(one.minutesEarlier) <= 0);
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
            {earlier.map(({ crew, minutesEarlier }) => (
              <li key={crew}>{texts.gainOne(crewLabel(state, crew), minutes(minutesEarlier))}</li>
            ))}
            {none.length > 0 ? (
              <li>{texts.gainNone(none.map(({ crew }) => crewLabel(state, crew)).join('; '))}</li>
            ) : null}
          </ul>
        ) : null}
      </div>
    </div>
  );
}
