import { useCallback, useEffect, useSyncExternalStore } from 'react';
import { createCell } from '../data/cell.ts';
import { usePorts } from '../data/ports/ports.ts';
import type { Storage } from '../data/ports/storage.ts';

export type Theme = 'day' | 'night';

const storeKey = (linkKey: string): string => `spanwright.theme.${linkKey}`;

/** What this link was last read in, else what the device prefers. */
export function rememberedTheme(storage: Storage, linkKey: string, prefersDark: boolean): Theme {
  const kept = storage.read(storeKey(linkKey));
  if (kept === 'day' || kept === 'night') return kept;
  return prefersDark ? 'night' : 'day';
}

/** Sets the theme on the page. Without it the page is near-black, so that no white flash comes first. */
export function applyTheme(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
  shown.write(theme);
}

const shown = createCell<Theme>('night');

/** Puts the page into the theme of its link, also when another link is opened in the same window. */
export function useLinkTheme(linkKey: string): void {
  const { storage } = usePorts();
  useEffect(() => {
    const prefersDark = matchMedia('(prefers-color-scheme: dark)').matches;
    applyTheme(rememberedTheme(storage, linkKey, prefersDark));
  }, [storage, linkKey]);
}

/** The theme of this link and its switch. */
export function useTheme(linkKey: string): readonly [Theme, (theme: Theme) => void] {
  const { storage } = usePorts();
  const theme = useSyncExternalStore(shown.subscribe, shown.read, shown.read);
  const choose = useCallback(
    (next: Theme) => {
      applyTheme(next);
      storage.write(storeKey(linkKey), next);
    },
    [storage, linkKey],
  );
  return [theme, choose];
}
