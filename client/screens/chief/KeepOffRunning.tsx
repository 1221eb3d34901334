import { expectedCrews, peopleFrom } from '#domain/progress/plannedCrews.ts';
import { inWords, taskLabel, zoneLabel } from '#domain/progress/words.ts';
import { clock } from '../../words/units.ts';
import { words } from '../../words/words.ts';
import { useCard } from './card.ts';
import { runningKeepOffs } from './comingKeepOff.ts';

/** While a keep-off task runs: which ground is closed to the crew's people. It stands on every card. */
export function KeepOffRunning() {
  const { state, crew, fit } = useCard();
  const said = words.chief.keepOff;
  return (
    <div role="alert">
      {runningKeepOffs(state).map((task) => {
        const since = state.tasks[task.id]?.startedAt;
        const takesPart = expectedCrews(state.plan, task).named.includes(crew);
        const own = takesPart ? peopleFrom(state.plan, task, crew) : 0;
        // A crew that is at it has the task itself below; what is left to say is where its others are.
        if (own >= fit) return null;
        if (own > 0) {
          return (
            <p key={task.id} className="notice strong">
              {said.ownStay(own)}
            </p>
          );
        }
        return (
          <section key={task.id} className="notice strong stack-tight">
            <h2>
              {said.running(taskLabel(state, task.id), since ? clock(since, state.zone) : '')}
            </h2>
            <p>{said.closed(inWords(task.zones.map((zone) => zoneLabel(state, zone))))}</p>
            <p>{said.allStay}</p>
          </section>
        );
      })}
    </div>
  );
}
