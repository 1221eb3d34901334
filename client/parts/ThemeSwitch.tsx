import { useTheme } from '../look/theme.ts';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';

/** Day or night colours, remembered for this link. */
export function ThemeSwitch({ linkKey }: { readonly linkKey: string }) {
  const [theme, choose] = useTheme(linkKey);
  const next = theme === 'day' ? 'night' : 'day';
  return (
    <Button
      look="plain"
      className="no-print"
      aria-label={next === 'night' ? words.theme.toNight : words.theme.toDay}
      onClick={() => choose(next)}
    >
      {words.theme[next]}
    </Button>
  );
}
