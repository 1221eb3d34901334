import type { Command } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import type { Refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { Receipt } from '#shared/wire.ts';
import type { OpenedBuild } from '#shared/wireBuilds.ts';
import { firstLinks, makeLink } from '../access/links.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Clock, Ids } from '../ports.ts';

type Ports = { readonly ledger: Ledger; readonly clock: Clock; readonly ids: Ids };

/**
 * Opens a build: the first entry and the links of its people, together. `more` are commands that follow at once, as
 * for a demo build that has already begun. Stops at the first refusal; what came before it stands.
 */
export async function openBuild(
  { ledger, clock, ids }: Ports,
  opening: Extract<Command, { kind: 'open-build' }>,
  more: readonly Command[] = [],
): Promise<Result<OpenedBuild, Refusal>> {
  const build = ids.short();
  const made = firstLinks(opening.body.work.crews).map((link) =>
    makeLink({ clock, ids }, build, link),
  );
  let state: BuildState = emptyBuild;
  for (const command of [opening, ...more]) {
    const decision = decide(state, command);
    if (!decision.ok) return bad(decision.reason);
    const after = state.number;
    const entries = decision.value.map((entry, place) => ({ number: after + 1 + place, ...entry }));
    const receipt: Receipt = {
      id: command.id,
      outcome: 'recorded',
      entry: after + 1,
      breaches: [...(entries[0]?.breaches ?? [])],
    };
    await ledger.append({
      build,
      after,
      texts: entries.map((entry) => JSON.stringify(entry)),
      receipt: { id: command.id, request: openedHere, status: 200, text: JSON.stringify(receipt) },
      links: command === opening ? made.map(({ stored }) => stored) : [],
    });
    state = entries.reduce(evolve, state);
  }
  return good({ build, links: made.map(({ shown }) => shown) });
}

/** No device sent these commands, so no request of a device is the same as theirs. */
const openedHere = 'opened by the server';

/** The build that a request with this id opened; null when there is none. */
export async function buildOpenedBy(ledger: Ledger, id: string): Promise<string | null> {
  for (const { build } of await ledger.heads()) {
    const receipt = await ledger.receipt(build, id);
    if (receipt?.request === openedHere) return build;
  }
  return null;
}
