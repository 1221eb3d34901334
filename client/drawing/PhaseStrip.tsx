import { useId } from 'react';
import type { BuildState } from '#domain/progress/state.ts';
import { words } from '../words/words.ts';
import { Patterns } from './Patterns.tsx';
import { useWidth } from './useWidth.ts';
import './drawing.css';

type Phase = {
  readonly name: string;
  readonly done: number;
  readonly atWork: number;
  readonly of: number;
};

/** For a build without a bridge: its phases in order, each as long as it has tasks, filled as they are done. */
export function PhaseStrip({ state }: { readonly state: BuildState }) {
  const id = useId();
  const [box, width] = useWidth<HTMLElement>(1000);
  const phases = phasesOf(state);
  const said = words.strip;
  if (phases.length === 0) return <p className="notice">{said.noWork}</p>;
  const lane = 30;
  return (
    <figure ref={box} className="phases">
      <svg
        className="drawing"
        viewBox={`0 0 ${width} ${phases.length * (lane + 28)}`}
        height={phases.length * (lane + 28)}
        role="img"
        aria-label={`${said.title}. ${phases.map(({ name, done, of }) => said.phase(name, done, of)).join('; ')}.`}
      >
        <Patterns id={id} />
        {phases.map((phase, index) => {
          const top = index * (lane + 28);
          const share = (count: number): number => ((width - 4) * count) / phase.of;
          return (
            <g key={phase.name}>
              <text className="d-text" x={2} y={top + 18}>
                {said.phase(phase.name, phase.done, phase.of)}
              </text>
              <rect className="d-open" x={2} y={top + 26} width={width - 4} height={lane - 6} />
              <rect
                className="d-done"
                x={2}
                y={top + 26}
                width={share(phase.done)}
                height={lane - 6}
              />
              <rect
                className="d-at-work"
                fill={`url(#${id}-hatch)`}
                x={2 + share(phase.done)}
                y={top + 26}
                width={share(phase.atWork)}
                height={lane - 6}
              />
            </g>
          );
        })}
      </svg>
    </figure>
  );
}

function phasesOf(state: BuildState): Phase[] {
  const phases = new Map<string, { done: number; atWork: number; of: number }>();
  for (const task of state.work.tasks) {
    const name = task.phase === '' ? words.strip.unnamed : task.phase;
    const phase = phases.get(name) ?? { done: 0, atWork: 0, of: 0 };
    const status = state.tasks[task.id]?.status ?? 'to-come';
    phase.of += 1;
    if (status === 'done') phase.done += 1;
    else if (status !== 'to-come') phase.atWork += 1;
    phases.set(name, phase);
  }
  return [...phases].map(([name, phase]) => ({ name, ...phase }));
}
