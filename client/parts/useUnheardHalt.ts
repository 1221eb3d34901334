import { isOpen, isUnsent } from '../data/sender.ts';
import { useBuild } from '../data/useBuild.ts';
import { useNow } from '../data/useNow.ts';

/** Longer than a good link takes, and too long to stand still for while a bridge moves: milliseconds. */
const soon = 3000;

/** Whether a halt was called here that the command post has not answered: nobody else knows of it yet. */
export function useUnheardHalt(): boolean {
  const { sendings } = useBuild();
  const now = useNow(1000, 0);
  return sendings.some(
    (one) =>
      one.kind === 'halt' &&
      isOpen(one) &&
      (isUnsent(one) || now - Date.parse(one.happenedAt) > soon),
  );
}
