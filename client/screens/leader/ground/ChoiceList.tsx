import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { ChoiceFigure, choiceReach } from '../../../drawing/ChoiceFigure.tsx';
import type { Launching } from '../../../drawing/launchMoment.ts';
import { Button } from '../../../parts/Button.tsx';
import { metres, minutes, tonnes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import '../launch/launch.css';
import { type RankedChoice, rankChoices } from './choiceOrder.ts';
import { RuledOutList } from './RuledOutList.tsx';
import type { Design } from './useDesign.ts';

/** The bridges that fit, drawn at one scale with their numbers beside, the wanted one first; and what rules others out. */
export function ChoiceList({ design }: { readonly design: Design }) {
  const { facts, times, ground, kits } = design;
  const { choice } = facts;
  const { kit } = kits;
  const said = words.choice;
  if (!choice || !ground || !kit) return null;
  if (choice.fitting.length === 0) {
    return (
      <section className="stack-wide" aria-label={said.title}>
        <h2>{said.noneFits}</h2>
        <RuledOutList ruledOut={choice.ruledOut} />
      </section>
    );
  }
  const ranked = rankChoices(choice.fitting, times.times);
  const launchings = ranked.map(({ choice: { bridge } }): Launching => ({ bridge, kit, ground }));
  const reach = choiceReach(launchings);
  const chosen = design.design?.ok ? design.design.value : null;
  return (
    <section className="stack-wide" aria-label={said.title}>
      <h2>{said.title}</h2>
      <p className="second reading">
        {said.lead} {design.daylight ? said.daylight : said.noDaylight}
      </p>
      <TimesLine design={design} />
      {ranked.map((one, row) => (
        <article
          key={`${one.choice.bridge.bays}/${one.choice.bridge.nose}`}
          className={`choice ${one.wanted ? 'wanted' : ''}`}
        >
          <ChoiceHead one={one} />
          <div className="choice-body">
            {launchings[row] ? (
              <ChoiceFigure
                launching={launchings[row]}
                reach={reach}
                label={said.figure(said.name(one.choice.bridge.bays, one.choice.bridge.nose))}
              />
            ) : null}
            <ChoiceNumbers one={one} ground={ground} kit={kit} />
          </div>
          {chosen?.bays === one.choice.bridge.bays && chosen.nose === one.choice.bridge.nose ? (
            <p className="second">{said.taken}</p>
          ) : (
            <p className="no-print">
              <Button
                onClick={() =>
                  design.setWish({
                    bays: String(one.choice.bridge.bays),
                    nose: String(one.choice.bridge.nose),
                  })
                }
              >
                {said.take}
                <span className="out-of-sight">
                  {' '}
                  {said.name(one.choice.bridge.bays, one.choice.bridge.nose)}
                </span>
              </Button>
            </p>
          )}
        </article>
      ))}
      <RuledOutList ruledOut={choice.ruledOut} />
    </section>
  );
}

function ChoiceHead({ one: { choice, wanted, why } }: { readonly one: RankedChoice }) {
  const said = words.choice;
  return (
    <div>
      <h3 className="launch-does">
        {wanted ? `${said.wanted}: ` : ''}
        {said.name(choice.bridge.bays, choice.bridge.nose)}
      </h3>
      <p>{why}</p>
    </div>
  );
}

function ChoiceNumbers({
  one: { choice, times },
  ground,
}: {
  readonly one: RankedChoice;
  readonly ground: Ground;
  readonly kit: Kit;
}) {
  const said = words.choice;
  const { bridge } = choice;
  const opens =
    times === null
      ? said.cannot
      : times === undefined
        ? said.atLeast(minutes(choice.leastMinutes))
        : said.opensIn(minutes(times.p50), minutes(times.p80));
  const needed = metres(bridge.roomNeeded);
  const facts: readonly (readonly [string, string])[] = [
    [said.opens, opens],
    [
      said.length,
      said.lengthIs(
        metres(bridge.length),
        bridge.bays,
        bridge.nose > 0 ? said.noseIs(metres(bridge.noseLength)) : '',
      ),
    ],
    [said.loadClass, said.loadClassIs(bridge.loadClass, choice.classMargin)],
    [
      said.room,
      choice.roomOver === null || ground.roomBehind === null
        ? said.roomUnknown(needed)
        : said.roomIs(needed, metres(choice.roomOver)),
    ],
    [said.bearings, said.bearingsAre(metres(bridge.bearing.near), metres(bridge.bearing.far))],
    [said.people, said.peopleAre(choice.people, choice.onSite)],
    [said.bring, said.bringIs(choice.loads, tonnes(choice.tonnes * 1000))],
    [said.moves, said.movesAre(choice.moves, choice.tasks)],
  ];
  return (
    <dl className="facts">
      {facts.map(([term, text]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

/** How far the times are, and a way to stop or begin again. */
function TimesLine({ design: { times } }: { readonly design: Design }) {
  const said = words.choice;
  if (times.progress !== null) {
    return (
      <div className="row no-print" role="status">
        <label className="row">
          {said.working} <progress value={times.progress} />
        </label>
        <Button onClick={times.stop}>{said.stop}</Button>
      </div>
    );
  }
  if (!times.failed && !times.stopped) return null;
  return (
    <div className="row no-print" role="status">
      <p>{times.failed ? said.failed : said.stopped}</p>
      <Button onClick={times.again}>{said.again}</Button>
    </div>
  );
}
