import type { TaskStatus } from '#domain/progress/state.ts';

/** A short bar for a task: solid done, hatched at work, dashed to come, barred stopped. The word stands beside it. */
export function TaskMark({ status }: { readonly status: TaskStatus }) {
  return (
    <svg className="task-mark" viewBox="0 0 28 14" width="28" height="14" aria-hidden="true">
      {status === 'done' ? (
        <rect
          x="1"
          y="1"
          width="26"
          height="12"
          fill="var(--solid)"
          stroke="var(--ink)"
          strokeWidth="2"
        />
      ) : (
        <rect
          x="1"
          y="1"
          width="26"
          height="12"
          fill="none"
          stroke={status === 'stopped' ? 'var(--accent)' : 'var(--ink)'}
          strokeWidth={status === 'stopped' ? 2.5 : 1.5}
          strokeDasharray={status === 'to-come' ? '4 3' : undefined}
        />
      )}
      {status === 'at-work' ? (
        <path
          d="M4 13 13 1M11 13 20 1M18 13 26 2.5"
          stroke="var(--ink)"
          strokeWidth="1.5"
          fill="none"
        />
      ) : null}
      {status === 'stopped' ? (
        <path d="M11 4v6M17 4v6" stroke="var(--accent)" strokeWidth="2.5" fill="none" />
      ) : null}
    </svg>
  );
}
