import { useCallback, useEffect, useRef, useState } from 'react';
import type { CrewGain } from '#domain/schedule/improve/gains.ts';
import type { PlanNews } from '#domain/schedule/improve/news.ts';
import type { Plan } from '#domain/schedule/plan.ts';
import type { PlanningJob, PlanningSaid } from './messages.ts';

/** How a job of this device's own planner stands. What was found stays when it is over or was ended. */
export type Planning = {
  readonly step: 'none' | 'working' | 'over' | 'failed';
  readonly best: { readonly plan: Plan; readonly news: PlanNews } | null;
  readonly progress: { readonly done: number; readonly of: number } | null;
  readonly gains: readonly CrewGain[] | null;
  /** Why no plan can be made. */
  readonly refused: string | null;
};

const nothing: Planning = { step: 'none', best: null, progress: null, gains: null, refused: null };

/**
 * Plans on this device, in a worker, without asking the server: with the same engine. One job at a time; a new one ends
 * the one before, and so does leaving the page.
 */
export function usePlanning(): {
  readonly planning: Planning;
  readonly begin: (job: PlanningJob) => void;
  /** Ends the job; the best plan so far stays. */
  readonly end: () => void;
} {
  const [planning, setPlanning] = useState<Planning>(nothing);
  const worker = useRef<Worker | null>(null);

  const close = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
  }, []);
  useEffect(() => close, [close]);

  const end = useCallback(() => {
    close();
    setPlanning((before) => ({
      ...before,
      step: before.step === 'working' ? 'over' : before.step,
    }));
  }, [close]);

  const begin = useCallback(
    (job: PlanningJob) => {
      close();
      setPlanning({ ...nothing, step: 'working' });
      const next = new Worker(new URL('./planning.worker.ts', import.meta.url), { type: 'module' });
      worker.current = next;
      next.onerror = () => setPlanning((before) => ({ ...before, step: 'failed' }));
      next.onmessage = ({ data }: MessageEvent<PlanningSaid>) => {
        // What an ended worker still had to say is nobody's.
        if (worker.current !== next) return;
        if (data.kind === 'over') close();
        setPlanning((before) => after(before, data));
      };
      next.postMessage(job);
    },
    [close],
  );

  return { planning, begin, end };
}

function after(before: Planning, said: PlanningSaid): Planning {
  switch (said.kind) {
    case 'best':
      return { ...before, best: { plan: said.plan, news: said.news } };
    case 'progress':
      return { ...before, progress: { done: said.done, of: said.of } };
    case 'gains':
      return { ...before, gains: said.gains };
    case 'refused':
      return { ...before, refused: said.sentence };
    case 'over':
      return { ...before, step: 'over' };
  }
}
