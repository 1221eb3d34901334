import { Type } from 'typebox';
import { heldNow } from '#domain/bridge/statics/heldNow.ts';
import { pullBack } from '#domain/bridge/statics/pullBack.ts';
import { stageStatics } from '#domain/bridge/statics/stageStatics.ts';
import { refusal } from '#domain/refusal.ts';
import { RefusalReply } from '#shared/wire.ts';
import { StagesReply } from '#shared/wireBridges.ts';
import { everyRole } from '../access/gate.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';
import { buildUnknown } from './buildUnknown.ts';
import { count } from './query.ts';

/** GET /api/builds/:build/stages?stage=N&into=M: how the bridge is launched; what holds it where it has stopped. */
export function stagesRoute(app: App, { builds, kits }: Site): void {
  app.get(
    '/api/builds/:build/stages',
    {
      config: { callers: everyRole },
      schema: {
        summary: 'The launch stage by stage, and what holds a bridge that has stopped',
        description:
          'With `stage`, and `into` metres of its move gone (all of it when left out), `held` says what holds the bridge there and `pullBack` the moves that bring it back.',
        params: Type.Object({ build: Type.String() }),
        querystring: Type.Object({
          stage: Type.Optional(count),
          into: Type.Optional(Type.String({ pattern: '^[0-9]{1,3}([.][0-9]{1,3})?$' })),
        }),
        response: { 200: StagesReply, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const running = await builds.get(request.params.build);
      if (!running) return buildUnknown(reply);
      const { bridge, ground } = running.live.state;
      if (!bridge) return { stages: [], held: null, pullBack: [] };
      const found = kits.get(bridge.kit.name);
      if (found?.hash !== bridge.kit.hash) {
        const sentence = `This server does not have the kit "${bridge.kit.name}" as it was when the bridge was designed. Put that kit file back.`;
        return refuse(reply, refusal('kit-unknown', sentence, [bridge.kit.name]));
      }
      const { kit } = found;
      const { stage, into } = request.query;
      const fall = ground?.rollerFall ?? 0;
      const row = bridge.stages[Number(stage) - 1];
      const stopped = row && {
        stage: row.stage,
        into: into === undefined ? row.metres : Number(into),
      };
      return {
        stages: stageStatics(bridge, kit, fall),
        held: stopped ? heldNow(bridge, kit, stopped, fall) : null,
        pullBack: stopped ? pullBack(bridge, kit, stopped) : [],
      };
    },
  );
}
