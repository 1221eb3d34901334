import type { Forecast } from '../forecast/forecast.ts';
import type { BuildState } from '../progress/state.ts';
import { holdUps } from '../progress/views/holdUps.ts';
import { phaseNow } from '../progress/views/phase.ts';
import { dateTimeGroup } from './dateTimeGroup.ts';
import { bridgeText, builtText, siteText, startedText, workText } from './reportBuild.ts';
import { openingText } from './reportOpening.ts';
import { lightText, peopleText, safetyText, shortText, waterText } from './reportSite.ts';
import { zoneLetter } from './zoneLetter.ts';

/** One titled line of a report. `key` names it for programs and never changes. */
type ReportLine = { readonly key: string; readonly title: string; readonly text: string };

/** A situation report in plain words, ready to be read over a radio in this order. */
export type SituationReport = {
  /** When it was made, as a full date-time group: with the sender it names the report. */
  readonly group: string;
  readonly lines: readonly ReportLine[];
};

export type ReportInput = {
  readonly state: BuildState;
  readonly forecast: Forecast | null;
  /** ISO 8601 UTC. */
  readonly now: string;
  /** Who sends it, as the net knows them. */
  readonly sender: string;
  /** ISO 8601 UTC; null when none is agreed. */
  readonly nextReport: string | null;
};

/**
 * Reports a build as it stands now. Order and content: a usual situation report (date-time group,
 * sender, place, activity, own situation, stores, people, remarks) with what a bridge build adds.
 */
export function situationReport(input: ReportInput): SituationReport {
  const { forecast, now, sender, nextReport } = input;
  const letter = zoneLetter(input.state.zone, now);
  // Where the site's zone has no letter the whole report speaks Z, so that group and clocks agree.
  const state = letter === 'Z' ? { ...input.state, zone: 'UTC' } : input.state;
  const group = dateTimeGroup(now, letter, 'full');
  const held = holdUps(state, now).map(({ sentence }) => sentence);
  const lines: readonly (readonly [key: string, title: string, text: string])[] = [
    ['group', 'Date-time group', `${group}. All times ${letter}.`],
    ['sender', 'From', state.unit ? `${sender}, ${state.unit}.` : `${sender}.`],
    ['site', 'Site', siteText(state)],
    ['bridge', 'Bridge', bridgeText(state)],
    ['phase', 'Phase now', `${phaseNow(state)}.`],
    ['work', 'Work complete', workText(state)],
    ['built', 'Built and moved', builtText(state)],
    ['started', 'Started', startedText(state, now)],
    ['opening', 'Time to open', openingText(state, forecast, now)],
    ['people', 'People', peopleText(state)],
    ['short', 'Short', shortText(state, now)],
    ['held', 'Held up by', held.length > 0 ? held.join(' ') : 'Nothing.'],
    ['light', 'Light', lightText(state, now)],
    ['water', 'Water and wind', waterText(state, now)],
    ['safety', 'Safety', safetyText(state, now)],
    [
      'next',
      'Next report',
      nextReport ? `${dateTimeGroup(nextReport, letter, 'full')}.` : 'None agreed.',
    ],
  ];
  return { group, lines: lines.map(([key, title, text]) => ({ key, title, text })) };
}
