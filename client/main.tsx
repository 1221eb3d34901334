import './look/themes.css';
import './look/base.css';
import './look/parts.css';
import './look/heads.css';
import './look/forms.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { linkKeyOf, placeOf } from './data/place.ts';
import { devicePorts, PortsContext } from './data/ports/ports.ts';
import { applyTheme, rememberedTheme } from './look/theme.ts';
import { Broken } from './parts/Broken.tsx';

// Before the first paint: the page of this link must not flash in the other theme.
const linkKey = linkKeyOf(placeOf(location.pathname, location.hash));
const prefersDark = matchMedia('(prefers-color-scheme: dark)').matches;
applyTheme(rememberedTheme(devicePorts.storage, linkKey, prefersDark));

const queries = new QueryClient({
  defaultOptions: { queries: { refetchOnWindowFocus: false, retry: 2 } },
});

const root = document.getElementById('root');
if (!root) throw new Error('the page lacks its root');
createRoot(root).render(
  <StrictMode>
    <Broken>
      <PortsContext value={devicePorts}>
        <QueryClientProvider client={queries}>
          <App />
        </QueryClientProvider>
      </PortsContext>
    </Broken>
  </StrictMode>,
);
