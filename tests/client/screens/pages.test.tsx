import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { createApi } from '#client/data/api.ts';
import { BuildContext, type BuildView } from '#client/data/useBuild.ts';
import { CrewColumns } from '#client/drawing/CrewColumns.tsx';
import { OpeningStrip } from '#client/drawing/OpeningStrip.tsx';
import { SpanFigure } from '#client/drawing/SpanFigure.tsx';
import { Meanwhile } from '#client/parts/Meanwhile.tsx';
import { CardJobs } from '#client/screens/chief/CardJobs.tsx';
import { CardContext } from '#client/screens/chief/card.ts';
import { HaltCard } from '#client/screens/chief/HaltCard.tsx';
import { KeepOffRunning } from '#client/screens/chief/KeepOffRunning.tsx';
import CommanderPage from '#client/screens/commander/CommanderPage.tsx';
import type { BuildState } from '#domain/progress/state.ts';
import { forecast, now, state } from '../fixtures/larchFord.ts';
import { createFakeClock } from '../support/fakeClock.ts';
import { createFakeNetwork } from '../support/fakeNetwork.ts';

const api = createApi(createFakeNetwork(() => 'down').network, createFakeClock(), 's');

function view(change: Partial<BuildView> = {}): BuildView {
  const shown = change.state ?? state;
  return {
    build: 'larch',
    linkKey: 'larch.1',
    secret: 's',
    told: shown,
    forecast,
    you: { role: 'commander', name: 'Commander' },
    heardAt: now,
    online: true,
    now,
    skew: now - Date.now(),
    send: () => new Promise(() => {}),
    sendings: [],
    dismiss: () => {},
    takeBack: () => {},
    api,
    jobs: {},
    ...change,
    state: shown,
  };
}

function page(content: ReactNode, change: Partial<BuildView> = {}): string {
  return renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <BuildContext value={view(change)}>{content}</BuildContext>
    </QueryClientProvider>,
  );
}

/** What a reader sees or hears, without the markup. */
const textOf = (markup: string): string =>
  markup
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('&#x27;', '’')
    .replaceAll(/\s+/g, ' ');

function card(content: ReactNode, shown: BuildState, crew: string): string {
  const fit = shown.crews[crew]!.fit;
  const cardView = { crew, crewName: crew, fit, awake: true, press: (act: () => void) => act() };
  return page(<CardContext value={cardView}>{content}</CardContext>, { state: shown });
}

describe('the commander’s page', () => {
  const text = textOf(page(<CommanderPage />));

  it('answers first at the chosen confidence, then with the even chance and against the time asked for', () => {
    expect(text).toMatch(/Nine in ten by \d\d:\d\d/);
    expect(text).toMatch(/Even chance by \d\d:\d\d/);
    expect(text).toContain('Asked for 17:00: 19 of 20 make it.');
  });

  it('says bays and metres before any share of the work', () => {
    expect(text).toContain('8 of 11 bays, 24.0 m of 50.5 m moved');
    expect(text.indexOf('of 11 bays, ')).toBeLessThan(text.indexOf('% of the person-minutes'));
  });

  it('names its zone, the people, the load class in plain words, and who decides', () => {
    expect(text).toContain('all times Z');
    expect(text).toContain('30 of 31 people fit · 1 hurt');
    expect(text).toContain('One vehicle at a time');
    expect(text).toContain('The manual of the equipment on site');
    expect(text).toContain('not for use');
  });

  it('has one main heading, and none below that skips a level', () => {
    const levels = [...page(<CommanderPage />).matchAll(/<h([1-6])/g)].map(([, level]) =>
      Number(level),
    );
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [index, level] of levels.entries()) {
      expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
    }
  });

  it('says loudly when the line is lost, and how old it is', () => {
    const lost = textOf(page(<CommanderPage />, { online: false, heardAt: now - 100_000 }));
    expect(lost).toMatch(/No link\. Last heard (90|100) s ago/);
  });

  it('shows a halt before anything else', () => {
    const halt = {
      entry: 239,
      by: { role: 'chief' as const, name: 'Cpl R', crew: 'right' },
      why: 'panel slipped',
      at: new Date(now).toISOString(),
      since: new Date(now).toISOString(),
      acknowledged: {},
    };
    const halted = textOf(page(<CommanderPage />, { state: { ...state, halt } }));
    expect(halted.indexOf('Halt since 13:33')).toBeGreaterThan(-1);
    expect(halted.indexOf('Halt since')).toBeLessThan(halted.indexOf('Nine in ten'));
    expect(halted).toContain('0 of 6 crews');
  });

  it('stands without plan, bridge or forecast', () => {
    const bare = { ...state, plan: null, bridge: null, ground: null, planCount: 0 };
    const none = { ...forecast, forecast: null, why: 'No plan has been accepted yet.' };
    const text = textOf(page(<CommanderPage />, { state: bare, forecast: none }));
    expect(text).toContain('No plan');
  });
});

describe('a running keep-off task on a chief’s card', () => {
  const move = state.work.tasks.find(
    ({ id, keepOff }) => keepOff && state.tasks[id]?.status === 'to-come',
  )!;
  const begun = {
    ...state.tasks[move.id]!,
    status: 'at-work' as const,
    startedAt: new Date(now).toISOString(),
  };
  const moving = { ...state, tasks: { ...state.tasks, [move.id]: begun } };
  const said = (crew: string): string => textOf(card(<KeepOffRunning />, moving, crew));

  it('says what is closed to a crew that has no part in it', () => {
    expect(said('brace')).toContain(`Keep off: ${move.name} (${move.number}) is running since`);
    expect(said('brace')).toContain('Closed: ');
  });

  it('says to a crew that takes part how many of it, and where the others are', () => {
    expect(said('left')).toContain('4 of yours take part, all others stay off');
    expect(textOf(card(<KeepOffRunning />, state, 'brace')).trim()).toBe('');
  });
});

describe('the drawings', () => {
  it('say in words what the side view shows', () => {
    const markup = page(<SpanFigure state={state} />);
    const text = textOf(markup);
    for (const sentence of ['8 of 11 bays stand.', 'At work: Bay 9.', 'Moved 24.0 m of 50.5 m.']) {
      expect(text).toContain(sentence);
      expect(markup).toMatch(new RegExp(`aria-label="[^"]*${sentence}`));
    }
  });

  it('draw phases for a build without a bridge', () => {
    const markup = page(<SpanFigure state={{ ...state, bridge: null }} />);
    expect(markup).toMatch(/aria-label="Phases\. Ready site: \d+ of \d+ tasks done/);
  });

  it('say the twenty openings in words', () => {
    const text = textOf(
      page(
        <OpeningStrip
          openings={forecast.forecast!.openings}
          askedFor={state.askedFor}
          start={state.start}
          zone="UTC"
        />,
      ),
    );
    expect(text).toContain('19 of 20 equally likely openings come by 17:00');
  });

  it('name every crew and every task of the columns with its state', () => {
    const text = textOf(
      page(<CrewColumns state={state} now={now} dusk={null} onTask={() => {}} />),
    );
    for (const crew of state.work.crews) expect(text).toContain(crew.name);
    expect(text).toMatch(/Bay 9, right \(\d+\), 6 people, at work/);
    expect(text).toMatch(/KEEP OFF · Move 4 .* done, \d\d:\d\d to \d\d:\d\d/);
  });
});

describe('the chief’s card', () => {
  it('gives the job, its cautions before its tick, and the next two', () => {
    const text = textOf(card(<CardJobs />, state, 'right'));
    expect(text).toContain('Bay 9, right');
    expect(text.indexOf('One voice gives the lift')).toBeGreaterThan(-1);
    expect(text.indexOf('One voice gives the lift')).toBeLessThan(text.indexOf('Done'));
    expect(text).toContain('then Bay 10, right');
    expect(text).toContain('then Bay 11, right');
    expect(text).toContain('your leader decide');
  });

  it('says what an idle crew waits for', () => {
    const text = textOf(card(<CardJobs />, state, 'stores'));
    expect(text).toContain('Nothing for this crew now');
    expect(text).toContain('Truck 5, deck for bays 8 to 11 is not here');
  });

  it('starts nothing while a halt is on, and asks for the head count', () => {
    const halt = {
      entry: 239,
      by: { role: 'leader' as const, name: 'Leader' },
      why: '',
      at: new Date(now).toISOString(),
      since: new Date(now).toISOString(),
      acknowledged: {},
    };
    const halted = { ...state, halt };
    expect(textOf(card(<CardJobs />, halted, 'brace'))).not.toContain('Start ');
    expect(textOf(card(<HaltCard />, halted, 'right'))).toContain('Loads down, 7 of 7 clear');
  });
});

describe('before the first word from the server', () => {
  const live = { heardAt: null, skew: 0, refusal: null, jobs: {} };

  it('says that it is fetching', () => {
    const text = textOf(page(<Meanwhile live={{ ...live, status: 'connecting' }} secret="s" />));
    expect(text).toContain('Fetching the build');
  });

  it('says to work by radio when there is no link', () => {
    const text = textOf(page(<Meanwhile live={{ ...live, status: 'lost' }} secret="s" />));
    expect(text).toContain('work by radio');
  });

  it('gives the server’s own sentence when the link is refused', () => {
    const refusal = { code: 'link-withdrawn', sentence: 'This link was withdrawn.' } as const;
    const text = textOf(
      page(<Meanwhile live={{ ...live, status: 'refused', refusal }} secret="s" />),
    );
    expect(text).toContain('This link was withdrawn.');
  });

  it('says what is missing from an address without its secret', () => {
    const text = textOf(page(<Meanwhile live={{ ...live, status: 'connecting' }} secret="" />));
    expect(text).toContain('lacks its secret');
  });
});
