import type { StageStatics } from '#domain/bridge/statics/stageStatics.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Launching } from '../../../drawing/launchMoment.ts';
import {
  carryWords,
  centreWords,
  marginAsked,
  massWords,
  pushWords,
  stageDoes,
  tipWords,
} from '../../../drawing/launchText.ts';
import { StageFigure } from '../../../drawing/StageFigure.tsx';
import { metres, tonnes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { closedZones, closesFarBank } from './closedZones.ts';

type Props = {
  readonly launching: Launching;
  readonly work: Work;
  readonly stage: StageStatics;
  /** Whether the tip rests on the far rollers before this move. */
  readonly landed: boolean;
};

/** One stage of the launch: to scale, then its numbers with their inputs, then what can hurt. */
export function StageCard({ launching, work, stage, landed }: Props) {
  const said = words.launch;
  const { bridge, kit } = launching;
  const off = bridge.stages[stage.stage - 1]?.noseOff?.length ?? 0;
  const moving = work.tasks.filter(
    ({ effect }) => effect?.kind === 'move' && effect.stage === stage.stage,
  );
  const cautions = [...new Set(moving.flatMap((task) => task.cautions))];
  const closed = closedZones(work, stage.stage).map(({ name }) => name);
  const { from, to } = stage.keepOff;
  const facts: readonly (readonly [string, string])[] = [
    [said.carry, `${carryWords(stage).join('; ')}.`],
    [said.overhang, `${said.overhangIs(metres(stage.overhang))}.`],
    [said.tip, tipWords(stage, landed)],
    [said.push, pushWords(stage)],
    [
      said.keepOff,
      `${said.keepOffIs(metres(-from), metres(to))}${closed.length > 0 ? ` ${said.closed(closed.join(', '))}` : ''}`,
    ],
  ];
  return (
    <article className="launch-stage stack">
      <h3 className="launch-does">
        <span className="launch-number">{said.stage(stage.stage)}</span> {stageDoes(bridge, stage)}.{' '}
        {off > 0 ? said.thenOff(off) : null}
      </h3>
      <StageFigure
        launching={launching}
        stage={stage}
        closesLanding={closesFarBank(work, stage.stage)}
      />
      <div className="launch-facts">
        <section className="stack-tight">
          <p className={`launch-margin ${stage.margin < 0 ? 'warn' : ''}`}>
            {said.margin}{' '}
            {stage.margin < 0
              ? said.tips(metres(-stage.margin))
              : said.marginIs(metres(stage.margin), metres(marginAsked(bridge, kit, landed)))}
          </p>
          <p>
            {said.marginFrom(
              tonnes(stage.kilograms),
              massWords(bridge, stage),
              centreWords(stage.margin, landed),
              metres(stage.marginInto),
            )}{' '}
            {stage.ratio === null ? null : said.ratio(ratioWords(stage.ratio))}
          </p>
        </section>
        <dl className="facts">
          {facts.map(([term, text]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        {cautions.length > 0 ? (
          <section className="notice stack-tight">
            <h4>{said.cautions}</h4>
            <ul className="stack-tight">
              {cautions.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
          </section>
        ) : null}
      </div>
    </article>
  );
}

/** Far above 1 the figure says nothing more. */
function ratioWords(ratio: number): string {
  return ratio > 10 ? words.launch.overTen : ratio.toFixed(2);
}
