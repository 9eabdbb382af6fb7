import { useEffect, useSyncExternalStore } from 'react';
import { useApp } from '../store/context.ts';

const darkQuery = '(prefers-color-scheme: dark)';

function subscribe(listener: () => void): () => void {
  const query = window.matchMedia(darkQuery);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
}

/** The theme in force: the reader's choice, or the system's. */
export function useThemeName(): 'light' | 'dark' {
  const chosen = useApp((state) => state.preferences.theme);
  const systemIsDark = useSyncExternalStore(subscribe, () => window.matchMedia(darkQuery).matches);
  return chosen === 'system' ? (systemIsDark ? 'dark' : 'light') : chosen;
}

/** Puts the theme on the page. */
export function useTheme(): void {
  const theme = useThemeName();
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
}
