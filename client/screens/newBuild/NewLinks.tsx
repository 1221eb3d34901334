import type { NewLink } from '#shared/wire.ts';
import { CopyText } from '../../parts/CopyText.tsx';
import { words } from '../../words/words.ts';

/** Links just made, with their addresses: shown this once. */
export function NewLinks({ links }: { readonly links: readonly NewLink[] }) {
  return (
    <section className="stack-wide">
      <h2>{links.length === 1 ? words.newLinks.one : words.newLinks.title}</h2>
      <p className="reading">{words.newLinks.more}</p>
      <ul className="new-links">
        {links.map((link) => (
          <li key={link.id} className="stack">
            <p>
              <strong>{link.name}</strong> <span className="second">{words.pages[link.role]}</span>{' '}
              <a href={link.address} target="_blank" rel="noreferrer">
                {words.newLinks.open}
                <span className="out-of-sight"> {link.name}</span>
              </a>
            </p>
            <CopyText label={words.newLinks.address(link.name)} text={wholeAddress(link.address)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The server gives the path; whoever gets the link needs the host too, as this page was reached. */
function wholeAddress(address: string): string {
  return new URL(address, location.origin).href;
}
