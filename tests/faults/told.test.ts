import { describe, expect, it, vi } from 'vitest';
import type { Ledger } from '#server/ledger/ledger.ts';
import type { ForecastHistory, FullForecast } from '#shared/wireForecast.ts';
import { playedBuild } from '#tests/support/playedBuild.ts';
import { command, testServer } from '#tests/support/server.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';

/** A ledger that keeps no forecasts while `full` says so; everything else it keeps. */
function fullDisk(full: { now: boolean }): Ledger {
  const ledger = memoryLedger();
  return {
    ...ledger,
    keepTold: async (build, told) => {
      if (full.now) throw new Error('disk full');
      await ledger.keepTold(build, told);
    },
  };
}

describe('forecasts that could not be kept', () => {
  it('are shown all the same, and the history goes on when there is room again', async () => {
    const full = { now: true };
    const server = await testServer({ ledger: fullDisk(full), runs: 50, moveWait: 0 });
    const start = server.clock.now().toISOString();
    server.clock.advance(60);
    const ford = await playedBuild(server, start, 60);
    const ask = async <Body>(path: string) => {
      const answer = await server.ask<Body>(
        'GET',
        `/api/builds/${ford.build}${path}`,
        ford.secret('leader'),
      );
      expect(answer.status, answer.text.slice(0, 200)).toBe(200);
      return answer.json;
    };
    const shown = (number: number) =>
      vi.waitFor(async () => {
        const { frame } = await ask<FullForecast>('/forecast/full');
        expect(frame?.number).toBe(number);
      });
    const { number } = (await server.ledger.head(ford.build))!;
    await shown(number);
    expect((await ask<ForecastHistory>('/forecast/history')).points).toEqual([]);

    full.now = false;
    server.clock.advance(1);
    const told = command(server, 'tell-strength', { crew: 'left', fit: 5 });
    const path = `/api/builds/${ford.build}/commands`;
    expect((await server.ask('POST', path, ford.secret('leader'), told)).status).toBe(200);
    await shown(number + 1);
    await vi.waitFor(async () => {
      const { points } = await ask<ForecastHistory>('/forecast/history');
      expect(points.map((point) => point.number)).toEqual([number + 1]);
    });
  });
});
