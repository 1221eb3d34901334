import { describe, expect, it } from 'vitest';
import { planningAid, reportText } from '#domain/brief/reportText.ts';
import { situationReport } from '#domain/brief/situationReport.ts';
import { simulate } from '#domain/forecast/simulate.ts';
import type { BuildState } from '#domain/progress/state.ts';
import { holdUps } from '#domain/progress/views/holdUps.ts';
import type { Work } from '#domain/tasks/work.ts';
import { planOf } from '#tests/domain/forecast/smallNetwork.ts';
import { bridge, ground, plainTask, stateOf, withDone } from './buildState.ts';

const now = '2026-11-25T13:33:20.000Z';

const work: Work = {
  tasks: [
    { ...plainTask('bay-1', 1, 6, 30), effect: { kind: 'bay', bay: 1 } },
    { ...plainTask('bay-2', 2, 6, 30), effect: { kind: 'bay', bay: 2 } },
    { ...plainTask('bay-3', 3, 6, 30), effect: { kind: 'bay', bay: 3 } },
    {
      ...plainTask('push', 4, 6, 30),
      effect: { kind: 'move', stage: 1, metres: 16.5, lands: true },
    },
    { ...plainTask('open', 5, 2, 60), opens: true },
  ],
  links: ['bay-1', 'bay-2', 'bay-3', 'push'].map((from, index, ids) => ({
    from,
    to: ids[index + 1] ?? 'open',
    counts: 'finish' as const,
    wait: 0,
  })),
  crews: [{ id: 'left', name: 'Left girder', people: 7, skills: [], attached: false }],
  zones: [],
  loads: [{ id: 'truck-5', name: 'Truck 5', arrives: 60 }],
};
const plan = planOf(work);

const state: BuildState = withDone(
  stateOf(work, {
    ground,
    bridge,
    plan,
    water: { rise: 0.04, level: null, at: '2026-11-25T13:00:00.000Z', tells: [] },
    events: [
      {
        entry: 7,
        kind: 'hurt',
        at: '2026-11-25T13:02:00.000Z',
        sentence: 'Left girder: hand hurt',
      },
      { entry: 9, kind: 'short', at: '2026-11-25T13:10:00.000Z', sentence: '2 pins short.' },
    ],
  }),
  'bay-1',
  '2026-11-25T11:34:00.000Z',
  '2026-11-25T12:04:00.000Z',
);

const forecast = simulate(work, plan, {
  runs: 100,
  seed: 1,
  shape: 'pert',
  askedFor: 330,
  past: {
    now: 120,
    tasks: [{ task: 'bay-1', status: 'done', start: 4, finish: 34, crews: [] }],
  },
});

function report(more: Partial<Parameters<typeof situationReport>[0]> = {}) {
  return situationReport({
    state,
    forecast,
    now,
    sender: 'Sgt Fern',
    nextReport: '2026-11-25T14:00:00.000Z',
    ...more,
  });
}

function line(key: string, more: Parameters<typeof report>[0] = {}): string {
  return report(more).lines.find((one) => one.key === key)!.text;
}

describe('a situation report', () => {
  // Fields after US Army FM 3-34.331 ch. 11 (purpose of engineer project reports) and the usual order
  // of a situation report (reference.com): see the fields one by one below.
  it('carries every field that a build report should, in the usual order', () => {
    expect(report().lines.map(({ key }) => key)).toEqual([
      'group',
      'sender',
      'site',
      'bridge',
      'phase',
      'work',
      'built',
      'started',
      'opening',
      'people',
      'short',
      'held',
      'light',
      'water',
      'safety',
      'next',
    ]);
  });

  it('has something to say on every line, as sentences', () => {
    const empty = report({
      state: stateOf({ ...work, tasks: [], links: [], crews: [] }),
      forecast: null,
    });
    for (const { text, title } of [...report().lines, ...empty.lines]) {
      expect(text, title).toMatch(/^\S.*\.$/s);
      expect(text, title).not.toMatch(/undefined|null|NaN|\.\./);
    }
  });

  it('opens with its date-time group and the letter of all its times', () => {
    expect(report().group).toBe('251333Z NOV 26');
    expect(line('group')).toBe('251333Z NOV 26. All times Z.');
    const swedish = { ...state, zone: 'Europe/Stockholm' };
    expect(line('group', { state: swedish })).toBe('251433A NOV 26. All times A.');
    expect(line('started', { state: swedish })).toBe('12:34, planned 12:30.');
  });

  it('speaks Z throughout where the zone of the site has no letter', () => {
    const indian = { ...state, zone: 'Asia/Kolkata' };
    expect(line('group', { state: indian })).toBe('251333Z NOV 26. All times Z.');
    expect(line('started', { state: indian })).toBe('11:34, planned 11:30.');
    expect(line('next', { state: indian })).toBe('251400Z NOV 26.');
  });

  it('names sender, unit, site and bridge', () => {
    expect(line('sender')).toBe('Sgt Fern, 3 Platoon.');
    expect(line('site')).toBe('Alder Weir, 51.5000 N 0.1333 W.');
    expect(line('bridge')).toBe(
      'Plain girder bridge, launched, 3 bays, 18 m, class 30, over a gap of 15 m. Demo kit: not for use.',
    );
    expect(line('bridge', { state: { ...state, bridge: null } })).toBe('None chosen yet.');
    expect(line('bridge', { state: { ...state, bridge: null, ground: null } })).toBe(
      'Work from a table of tasks; no bridge in it.',
    );
  });

  it('says work complete, bays and metres', () => {
    // One of four jobs of 6 people and 30 minutes, beside one of 2 people and 60: 3 of 14 man-hours.
    expect(line('work')).toBe(
      '21 per cent by man-hours, 3.0 of 14.0 (expected minutes times usual people); 1 of 5 tasks.',
    );
    expect(line('built')).toBe('1 of 3 bays built. 0 of 16.5 m moved.');
    expect(line('built', { state: { ...state, bridge: null } })).toBe('No bridge.');
  });

  it('says when the work began, or should have', () => {
    expect(line('started')).toBe('11:34, planned 11:30.');
    expect(line('started', { state: stateOf(work) })).toBe('Not started; planned 11:30.');
  });

  it('gives the time to open as a group with its confidence, the even chance and the range', () => {
    // No doubt in these minutes: 120 + 30 + 30 + 30 + 60 after 11:30.
    expect(line('opening')).toBe(
      'Nine in ten by 16:00 (251600Z NOV 26). Even chance by 16:00. ' +
        'Eight in ten lie between 16:00 and 16:00. Asked for 17:00: all 20 make it.',
    );
    const opened = withDone(state, 'open', '2026-11-25T15:00:00.000Z', '2026-11-25T16:20:00.000Z');
    expect(line('opening', { state: opened, now: '2026-11-25T16:30:00.000Z' })).toBe(
      'Open since 16:20 (251620Z NOV 26). Asked for 17:00: 40 min early.',
    );
    expect(line('opening', { forecast: null })).toBe('No forecast yet. Asked for 17:00.');
  });

  it('tells what is short, stores that are late among it', () => {
    expect(line('short')).toBe('2 pins short.');
    const late: BuildState = {
      ...state,
      events: [],
      loads: {
        'truck-5': {
          status: 'late',
          at: '2026-11-25T13:45:00.000Z',
          why: 'stuck at the ford',
          planned: { at: '2026-11-25T12:30:00.000Z', entry: 1 },
          tells: [],
        },
      },
    };
    expect(line('short', { state: late })).toBe('Truck 5 late, expected 13:45: stuck at the ford.');
    expect(line('short', { state: { ...state, events: [] } })).toBe('Nothing.');
  });

  it('repeats what the boards say holds the work up', () => {
    const stopped = {
      ...state.tasks['bay-2']!,
      status: 'stopped' as const,
      startedAt: '2026-11-25T12:10:00.000Z',
      why: 'pin jammed',
    };
    const held = { ...state, tasks: { ...state.tasks, 'bay-2': stopped } };
    const sentences = holdUps(held, now).map(({ sentence }) => sentence);
    expect(sentences.length).toBeGreaterThan(0);
    for (const sentence of sentences) expect(line('held', { state: held })).toContain(sentence);
  });

  it('gives the sun where the place is known', () => {
    expect(line('light')).toMatch(/^Sunset 1[56]:\d\d, EECT 1[67]:\d\d, EENT 17:\d\d\.$/);
    const nowhere = { ...state, ground: { ...ground, place: null } };
    expect(line('light', { state: nowhere })).toBe('Place not given, so no sun times.');
    expect(line('site', { state: nowhere })).toBe('Alder Weir. Place not given.');
  });

  it('gives the last readings of water and wind', () => {
    expect(line('water')).toBe('Water rising 4 cm an hour, read 13:00. Wind not measured.');
    const windy: BuildState = {
      ...state,
      water: { rise: -0.1, level: 1.25, at: '2026-11-25T13:20:00.000Z', tells: [] },
      wind: { speed: 9, at: '2026-11-25T13:30:00.000Z', tells: [] },
    };
    expect(line('water', { state: windy })).toBe(
      'Water falling 10 cm an hour, read 13:20. Level 1.25 m. Wind 9 m/s, read 13:30.',
    );
    const unread: BuildState = {
      ...state,
      water: { rise: null, level: null, at: null, tells: [] },
    };
    expect(line('water', { state: unread })).toBe('Water not measured. Wind not measured.');
    const measured = { ...unread, ground: { ...ground, water: { depth: 2, rise: 0 } } };
    expect(line('water', { state: measured })).toBe(
      'Water steady, as measured with the ground. Wind not measured.',
    );
  });

  it('puts a halt first among the safety events', () => {
    expect(line('safety')).toBe('13:02 Left girder: hand hurt.');
    const halted: BuildState = {
      ...state,
      halt: {
        entry: 12,
        by: { role: 'chief', name: 'Cpl Moss', crew: 'left' },
        why: 'roller slipped',
        at: '2026-11-25T13:31:00.000Z',
        since: '2026-11-25T13:30:00.000Z',
        acknowledged: {},
      },
    };
    expect(line('safety', { state: halted })).toMatch(
      /^HALT ON since 13:30: roller slipped\. 13:02/,
    );
    expect(line('safety', { state: { ...state, events: [] } })).toBe('No events.');
  });

  it('says the latest safety events in full and counts the older ones', () => {
    const events = Array.from({ length: 11 }, (_, k) => ({
      entry: k,
      kind: 'near-miss' as const,
      at: `2026-11-25T12:${10 + k}:00.000Z`,
      sentence: `near miss ${k}`,
    }));
    const text = line('safety', { state: { ...state, events } });
    expect(text).toMatch(/^3 earlier in the record\. 12:13 near miss 3\./);
    expect(text).toMatch(/12:20 near miss 10\.$/);
  });

  it('says when the next report is due', () => {
    expect(line('next')).toBe('251400Z NOV 26.');
    expect(line('next', { nextReport: null })).toBe('None agreed.');
  });
});

describe('the report as text', () => {
  it('is one lettered line for each, with who decides at the end', () => {
    const lines = reportText(report()).trimEnd().split('\n');
    expect(lines[0]).toBe('Situation report');
    expect(lines[1]).toBe('A. Date-time group: 251333Z NOV 26. All times Z.');
    expect(lines.at(-2)).toBe('P. Next report: 251400Z NOV 26.');
    expect(lines.at(-1)).toBe(planningAid);
    expect(lines).toHaveLength(report().lines.length + 2);
  });
});
