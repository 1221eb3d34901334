import { gains } from '#domain/schedule/improve/gains.ts';
import type { PlanningJob, PlanningSaid } from './messages.ts';
import { searchPieces } from './searchPieces.ts';

const say = (said: PlanningSaid): void => self.postMessage(said);

self.onmessage = ({ data }: MessageEvent<PlanningJob>) => {
  if (data.kind === 'search') {
    searchPieces(data.work, data.seconds, say, () => performance.now());
  } else {
    const { work, past, shape } = data;
    const onProgress = (done: number, of: number): void => say({ kind: 'progress', done, of });
    const found = gains(work, { shape, crews: true, past }, { onProgress });
    say({ kind: 'gains', gains: found });
  }
  say({ kind: 'over' });
};
