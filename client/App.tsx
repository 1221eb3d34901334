import { Suspense } from 'react';
import { useLocationProperty } from 'wouter/use-browser-location';
import { BuildProvider } from './data/BuildProvider.tsx';
import { linkKeyOf, type Place, placeOf } from './data/place.ts';
import { useBuild } from './data/useBuild.ts';
import { useLinkTheme } from './look/theme.ts';
import { Meanwhile } from './parts/Meanwhile.tsx';
import { PageLink } from './parts/PageLink.tsx';
import { CommanderForecast, pages } from './screens/pages.ts';
import { StartPage } from './screens/start/StartPage.tsx';
import { words } from './words/words.ts';

/** Reads the address and shows its page. */
export function App() {
  // With the fragment: two links to one page differ in their secret alone.
  const address = useLocationProperty(() => location.pathname + location.hash);
  const { pathname, hash } = new URL(address, location.origin);
  const place = placeOf(pathname, hash);
  useLinkTheme(linkKeyOf(place));
  if (place.page === 'start') return <StartPage secret={place.secret} />;
  if (place.page === 'unknown') return <UnknownPage secret={place.secret} />;
  return (
    <BuildProvider
      key={`${place.build}#${place.secret}`}
      build={place.build}
      secret={place.secret}
      meanwhile={(live) => <Meanwhile live={live} secret={place.secret} />}
    >
      <RolePage place={place} />
    </BuildProvider>
  );
}

type BuildPlace = Exclude<Place, { page: 'start' | 'unknown' }>;

function RolePage({ place }: { readonly place: BuildPlace }) {
  const { you } = useBuild();
  const Page = place.page === 'commander' && place.sub ? CommanderForecast : pages[place.page];
  // The leader may look at every page; everyone may look at the commander's.
  const fits = you.role === place.page || you.role === 'leader' || place.page === 'commander';
  if (!Page) return <UnknownPage secret={place.secret} />;
  if (!fits) {
    return (
      <main className="page stack-wide">
        <h1>{words.otherRole.title}</h1>
        <p className="lead">{words.otherRole.more(words.pages[you.role])}</p>
        <p>
          <PageLink
            to={{ page: you.role, build: place.build, secret: place.secret }}
            className="button"
          >
            {words.otherRole.go(words.pages[you.role])}
          </PageLink>
        </p>
      </main>
    );
  }
  return (
    <Suspense fallback={<main className="page" aria-busy="true" />}>
      <Page />
    </Suspense>
  );
}

function UnknownPage({ secret }: { readonly secret: string }) {
  return (
    <main className="page stack-wide">
      <h1>{words.unknownPage.title}</h1>
      <p className="lead">{words.unknownPage.more}</p>
      <p>
        <PageLink to={{ page: 'start', secret }} className="button">
          {words.unknownPage.home}
        </PageLink>
      </p>
    </main>
  );
}
