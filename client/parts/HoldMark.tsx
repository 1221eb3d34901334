import type { HoldStatus } from '#domain/progress/state.ts';

/** A box for a hold point: ticked passed, crossed failed, a bent line through a lapsed pass, empty to come. */
export function HoldMark({ hold }: { readonly hold: HoldStatus }) {
  const loud = hold === 'failed' || hold === 'lapsed';
  const line = loud ? 'var(--accent)' : 'var(--ink)';
  return (
    <svg className="hold-box" viewBox="0 0 18 18" aria-hidden="true">
      <rect
        x="1.5"
        y="1.5"
        width="15"
        height="15"
        fill={hold === 'passed' ? 'var(--solid)' : 'none'}
        stroke={line}
        strokeWidth="2"
      />
      {hold === 'passed' ? (
        <path d="m4.5 9.5 3 3 6-7" fill="none" stroke="var(--on-solid)" strokeWidth="2.5" />
      ) : null}
      {hold === 'failed' ? (
        <path d="m5 5 8 8m0-8-8 8" fill="none" stroke={line} strokeWidth="2.5" />
      ) : null}
      {hold === 'lapsed' ? (
        <path d="M3 15 8 8l3 3 4-8" fill="none" stroke={line} strokeWidth="2" />
      ) : null}
    </svg>
  );
}
