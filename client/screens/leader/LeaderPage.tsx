import { type ReactNode, useEffect, useRef } from 'react';
import { useBuild } from '../../data/useBuild.ts';
import { BuildHead } from '../../parts/BuildHead.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { words } from '../../words/words.ts';
import { AfterPage } from '../afterBuild/AfterPage.tsx';
import { ForecastParts } from '../forecast/ForecastParts.tsx';
import { StoresParts } from '../stores/StoresParts.tsx';
import { CrewsPage } from './crews/CrewsPage.tsx';
import { DraftBar } from './draft/DraftBar.tsx';
import { DraftProvider } from './draft/DraftProvider.tsx';
import { GroundPage } from './ground/GroundPage.tsx';
import { HoursPage } from './hours/HoursPage.tsx';
import { KitPage } from './kit/KitPage.tsx';
import { LaunchPage } from './launch/LaunchPage.tsx';
import { StoppedPage } from './launch/StoppedPage.tsx';
import { LinksPage } from './links/LinksPage.tsx';
import { HaltPanel } from './now/HaltPanel.tsx';
import { NowPage } from './now/NowPage.tsx';
import { PlanPage } from './plan/PlanPage.tsx';
import { RecordPage } from './record/RecordPage.tsx';
import { ReportPage } from './report/ReportPage.tsx';
import { SectionLinks } from './SectionLinks.tsx';
import type { Section } from './sectionGroups.ts';
import { useLeader } from './useLeader.ts';
import { TaskPage } from './work/TaskPage.tsx';
import { WorkPage } from './work/WorkPage.tsx';
import './leader.css';

const sections: Readonly<Record<Section, () => ReactNode>> = {
  now: () => <NowPage />,
  ground: () => <GroundPage />,
  launch: () => <LaunchPage />,
  work: () => <WorkPage />,
  crews: () => <CrewsPage />,
  hours: () => <HoursPage />,
  stores: () => <StoresParts />,
  plan: () => <PlanPage />,
  forecast: () => <ForecastParts leader />,
  report: () => <ReportPage />,
  links: () => <LinksPage />,
  record: () => <RecordPage />,
  after: () => <AfterPage />,
  kit: () => <KitPage />,
};

/** The leader's page: plans the build and runs it. Its parts are pages of their own below one address. */
export default function LeaderPage() {
  const { state } = useBuild();
  const { section, of } = useLeader();
  const place = section === '' ? 'now' : section;
  const known = Object.hasOwn(sections, place) ? (place as Section) : null;
  const name = known ? words.leader.sections[known] : words.pages.leader;
  const body = useRef<HTMLDivElement>(null);
  const before = useRef(`${section}/${of}`);

  // A new page below starts at its top, also for those who come by keyboard or ear.
  useEffect(() => {
    const here = `${section}/${of}`;
    if (before.current === here) return;
    before.current = here;
    window.scrollTo(0, 0);
    // Without being scrolled to: the halt at the head stays in sight.
    body.current?.focus({ preventScroll: true });
  }, [section, of]);

  return (
    <DraftProvider>
      <PageFrame
        title={words.title(name, state.name)}
        header={
          <>
            <BuildHead page={words.pages.leader} />
            <SectionLinks current={known} />
          </>
        }
        footer={
          <p className="second small">
            {words.planningAid}
            {state.bridge?.kit.notForUse ? ` ${words.notForUse}` : ''}
          </p>
        }
        className="leader"
      >
        <HaltPanel />
        <DraftBar />
        <div ref={body} tabIndex={-1}>
          {section === 'work' && of !== null ? (
            <TaskPage key={of} id={of} />
          ) : section === 'launch' && of === 'stopped' ? (
            <StoppedPage />
          ) : known ? (
            sections[known]()
          ) : (
            <p className="notice">{words.leader.noSection}</p>
          )}
        </div>
      </PageFrame>
    </DraftProvider>
  );
}
