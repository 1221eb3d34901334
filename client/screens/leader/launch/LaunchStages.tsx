import { useMemo } from 'react';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Launching } from '../../../drawing/launchMoment.ts';
import { words } from '../../../words/words.ts';
import { LaunchTable } from './LaunchTable.tsx';
import { StageCard } from './StageCard.tsx';
import './launch.css';

/** Every stage of a launch to scale with its statics, and all of them in one table. */
export function LaunchStages({
  launching,
  work,
}: {
  readonly launching: Launching;
  readonly work: Work;
}) {
  const said = words.launch;
  const { bridge, kit, ground } = launching;
  const stages = useMemo(
    () => stageStatics(bridge, kit, ground?.rollerFall ?? 0),
    [bridge, kit, ground],
  );
  if (stages.length === 0) return <p className="notice">{said.floated}</p>;
  const landing = stages.findIndex(({ lands }) => lands);
  return (
    <div className="stack-wide launch-stages">
      <p className="second reading">
        {said.lead} {said.rule}
      </p>
      {stages.map((stage, row) => (
        <StageCard
          key={stage.stage}
          launching={launching}
          work={work}
          stage={stage}
          landed={landing >= 0 && row > landing}
        />
      ))}
      <LaunchTable stages={stages} />
    </div>
  );
}
