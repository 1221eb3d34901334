import type { Entry } from '#domain/progress/entry.ts';
import { evolve } from '#domain/progress/evolve.ts';
import { type BuildState, emptyBuild } from '#domain/progress/state.ts';
import type { Ledger } from '../ledger/ledger.ts';

const page = 500;

/** The state of a build after its entry `number`; as it is now when the record is shorter. */
export async function stateAt(ledger: Ledger, build: string, number: number): Promise<BuildState> {
  let state = emptyBuild;
  for (;;) {
    const wanted = Math.min(page, number - state.number);
    if (wanted <= 0) return state;
    const entries = await ledger.entries(build, state.number, wanted);
    state = entries.reduce((before, { text }) => evolve(before, JSON.parse(text) as Entry), state);
    if (entries.length < wanted) return state;
  }
}
