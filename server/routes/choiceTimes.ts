import { Type } from 'typebox';
import { choices } from '#domain/bridge/choices.ts';
import { darkSpells } from '#domain/forecast/light/darkSpells.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { RefusalReply } from '#shared/wire.ts';
import {
  type ChoiceTimesFrame,
  type TimesProgressFrame,
  TimesRequest,
} from '#shared/wireBridges.ts';
import { askedFor } from '../kits.ts';
import { sseEvent } from '../live/sse.ts';
import { refuse } from '../refuse.ts';
import type { App, Site } from '../site.ts';

/** Nobody builds a bridge by hand for longer than this: minutes of daylight that are reckoned. */
const longest = 4 * 24 * 60;

/** Bridges compared on the same luck: the difference is theirs. */
const seed = 1;

/** POST /api/bridges/times: when each bridge of the choice opens, one after the other as they are worked out. */
export function choiceTimesRoute(app: App, { kits, planner, runs }: Site): void {
  app.post(
    '/api/bridges/times',
    {
      config: { callers: ['leader', 'host'] },
      schema: {
        summary: 'When each bridge of the choice would open',
        description:
          'Plans and forecasts each bridge of the choice with the kit’s crews and the usual doubt. Events `choice`, the advised one first, and `progress`; data are ChoiceTimesFrame and TimesProgressFrame as JSON. The stream ends when all are worked out; giving up the request stops the work.',
        body: TimesRequest,
        produces: ['text/event-stream'],
        response: { 200: Type.String(), 400: RefusalReply, 404: RefusalReply },
      },
    },
    async (request, reply) => {
      const { ground, kit: name, start } = request.body;
      const asked = askedFor(kits, ground, name);
      if (!asked.ok) return refuse(reply, asked.reason);
      const { kit, hash } = asked.value;
      const { fitting } = choices(ground, kit, hash);
      const dark = ground.place && start ? darkSpells(ground.place, start, longest) : [];
      const { raw } = reply;
      reply.hijack();
      raw.writeHead(200, {
        ...(reply.getHeaders() as Record<string, string>),
        'content-type': 'text/event-stream; charset=utf-8',
        'x-accel-buffering': 'no',
      });
      const stop = new AbortController();
      raw.once('close', () => stop.abort());
      // A broken pipe is news about the device, not a fault of the server; `close` follows.
      raw.on('error', () => {});
      const progress = (frame: TimesProgressFrame) => raw.write(sseEvent('progress', frame));
      progress({ done: 0, of: fitting.length });
      try {
        for (const [place, { bridge }] of fitting.entries()) {
          const work = orderOfWork(bridge, kit);
          const found = work.ok
            ? await planner.choice(
                { work: work.value, dark, runs, seed },
                {
                  signal: stop.signal,
                  onProgress: (done, of) =>
                    progress({ done: place + done / of, of: fitting.length }),
                },
              )
            : work;
          const { bays, nose } = bridge;
          const frame: ChoiceTimesFrame = { bays, nose, times: found.ok ? found.value : null };
          raw.write(sseEvent('choice', frame));
        }
      } catch (error) {
        if (!stop.signal.aborted) request.log.error({ err: error }, 'the times of a choice failed');
      } finally {
        raw.end();
      }
      return reply;
    },
  );
}
