import { choices } from '#domain/bridge/choices.ts';
import { groundAdvice } from '#domain/bridge/groundAdvice.ts';
import { hangsOn } from '#domain/bridge/hangsOn.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { RefusalReply } from '#shared/wire.ts';
import { BridgeReply } from '#shared/wireBridges.ts';
import { BridgeRequest } from '#shared/wireBuilds.ts';
import { choiceLine } from '../choiceLine.ts';
import { designWork } from '../kits.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';

/** POST /api/bridges: designs a bridge and says what it takes, recorded nowhere. */
export function bridgeRoute(app: App, { kits }: Site): void {
  app.post(
    '/api/bridges',
    {
      config: { callers: ['leader', 'host'] },
      schema: {
        summary: 'Design a bridge for a ground, recorded nowhere',
        body: BridgeRequest,
        response: { 200: BridgeReply, 400: RefusalReply, 404: RefusalReply, 422: RefusalReply },
      },
    },
    async (request, reply) => {
      const designed = designWork(kits, request.body);
      if (!designed.ok) return refuse(reply, designed.reason);
      const { ground } = request.body;
      const { bridge, work, kit } = designed.value;
      const own = work.crews.filter(({ attached }) => !attached);
      const stages = stageStatics(bridge, kit, ground.rollerFall ?? 0);
      const { fitting, ruledOut } = choices(ground, kit, bridge.kit.hash);
      return {
        bridge,
        work: {
          tasks: work.tasks.length,
          holds: work.tasks.filter(({ hold }) => hold).length,
          people: own.reduce((sum, { people }) => sum + people, 0),
          loads: work.loads.length,
        },
        stages,
        choice: { fitting: fitting.map(choiceLine), ruledOut },
        advice: groundAdvice(ground, kit, stages, null),
        hangsOn: hangsOn(ground, kit)
          .filter(({ decides }) => decides)
          .map(({ field }) => field),
      };
    },
  );
}
