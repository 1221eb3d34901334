import { useEffect, useId, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { PageLink } from '../../parts/PageLink.tsx';
import { words } from '../../words/words.ts';
import { type Section, sectionGroups } from './sectionGroups.ts';
import { useLeader } from './useLeader.ts';
import './sections.css';

/** The way between the leader's pages, in groups; on a phone one line that opens, so that the page itself comes first. */
export function SectionLinks({ current }: { readonly current: Section | null }) {
  const { section, of } = useLeader();
  const [open, setOpen] = useState(false);
  const list = useId();
  const said = words.leader;
  // Whoever has gone to a page wants to see it, not the way there.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the address is what closes the list
  useEffect(() => setOpen(false), [section, of]);
  return (
    <nav className="sections no-print" aria-label={said.sectionsTitle}>
      <Button
        look="plain"
        className="sections-open"
        aria-expanded={open}
        aria-controls={list}
        onClick={() => setOpen(!open)}
      >
        <span>{current ? said.sections[current] : words.pages.leader}</span>
        <span className="second">{open ? said.sectionsClose : said.sectionsOpen}</span>
      </Button>
      <div id={list} className={open ? 'sections-list is-open' : 'sections-list'}>
        <ul className="sections-home">
          <SectionLink section="now" current={current} />
        </ul>
        {(Object.keys(sectionGroups) as (keyof typeof sectionGroups)[]).map((group) => (
          <div key={group} className="sections-group">
            <p className="second small" id={`${list}-${group}`}>
              {said.groups[group]}
            </p>
            <ul aria-labelledby={`${list}-${group}`}>
              {sectionGroups[group].map((one) => (
                <SectionLink key={one} section={one} current={current} />
              ))}
            </ul>
          </div>
        ))}
      </div>
    </nav>
  );
}

function SectionLink({
  section,
  current,
}: {
  readonly section: Section;
  readonly current: Section | null;
}) {
  const { to } = useLeader();
  const name = words.leader.sections[section];
  return (
    <li>
      <PageLink to={to(section === 'now' ? '' : section)} current={section === current}>
        <span className="steady" data-text={name}>
          {name}
        </span>
      </PageLink>
    </li>
  );
}
