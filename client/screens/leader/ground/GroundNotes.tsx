import { groundAdvice } from '#domain/bridge/groundAdvice.ts';
import { type WaterRescue, waterRescue } from '#domain/bridge/safety/ringBuoys.ts';
import { waterTime } from '#domain/bridge/waterTime.ts';
import { Button } from '../../../parts/Button.tsx';
import { kilonewtons, metres, minutes } from '../../../words/units.ts';
import { words } from '../../../words/words.ts';
import { focusField } from './focusField.ts';
import type { Measured } from './groundForm.ts';
import type { Design } from './useDesign.ts';

/** What this ground asks of the work, and what the answer hangs on. */
export function GroundNotes({ design }: { readonly design: Design }) {
  return (
    <>
      <Advice design={design} />
      <Hangs design={design} />
    </>
  );
}

function Advice({ design }: { readonly design: Design }) {
  const { ground, facts, kits, times } = design;
  const said = words.ground;
  if (!ground || !kits.kit) return null;
  const latest = [...times.times.values()].flatMap((one) => (one ? [one.p80] : []));
  const advice = groundAdvice(
    ground,
    kits.kit,
    facts.stages,
    latest.length > 0 ? Math.min(...latest) : null,
  );
  const soft = facts.softBanks.map(({ bank, minutes: more }) =>
    more < 0.5 ? said.openingNot(bank) : said.opening(bank, minutes(more)),
  );
  const rollers = facts.footings.map(
    ({ bank, newtons, pressure }) =>
      `${said.footing(bank, kilonewtons(newtons))}${pressure === null ? '' : said.footingUnder(`${pressure.toFixed(0)} kPa`)}${ground[bank].strength === null ? said.footingUnknown : ''}.`,
  );
  const sentences = [
    ...advice.map(({ sentence }) => sentence),
    ...soft,
    ...rollers,
    // Said already where it comes too soon.
    ...(advice.some(({ code }) => code === 'water') ? [] : waterSentence(design)),
    ...(ground.water.depth === 0 ? [] : rescueSentences(waterRescue(ground.gap))),
  ];
  return (
    <section className="stack">
      <h3>{said.advice}</h3>
      {sentences.length === 0 ? <p>{said.adviceNone}</p> : null}
      <ul className="listed">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}

function rescueSentences(rescue: WaterRescue | null): string[] {
  return rescue ? [words.ground.rescue(rescue.buoys, metres(rescue.line))] : [];
}

function waterSentence({ ground }: Design): string[] {
  const left = ground && waterTime(ground);
  if (!left || left.minutes === 0) return [];
  return [
    left.minutes === null
      ? words.ground.waterNot(metres(left.metres, 2))
      : words.ground.waterLeft(metres(left.metres, 2), minutes(left.minutes)),
  ];
}

function Hangs({ design: { facts } }: { readonly design: Design }) {
  const said = words.ground;
  if (facts.unknowns.length === 0) return null;
  const label = (field: string) => said.fields[field as Measured] ?? field;
  const decide = facts.unknowns.filter(({ decides }) => decides);
  const rest = facts.unknowns.filter(({ decides }) => !decides);
  return (
    <section className="stack">
      <h3>{decide.length > 0 ? said.hangsTitle : said.hangsNone}</h3>
      {decide.length > 0 ? (
        <>
          <p className="second">{said.hangsMore}</p>
          <ul className="hangs">
            {decide.map(({ field }) => (
              <li key={field}>
                <Button look="plain" onClick={() => goTo(field)}>
                  {label(field)}
                </Button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {rest.length > 0 ? (
        <p className="second small">
          {said.restUnknown(rest.map(({ field }) => label(field)).join('; '))}
        </p>
      ) : null}
    </section>
  );
}

/** To the field of that name: what can be changed of it, for an unknown number the tick. */
function goTo(field: string): void {
  focusField(document.querySelector(`[data-field="${field}"] input:not(:disabled)`));
}
