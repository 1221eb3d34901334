import type { Author, Command } from '#domain/progress/command.ts';
import { decide } from '#domain/progress/decide.ts';
import { type Refusal, refusal } from '#domain/refusal.ts';
import { refusalStatus } from '#shared/refusals.ts';
import type { CommandRequest, Receipt, RefusalReply } from '#shared/wire.ts';
import type { Ledger, StoredReceipt } from '../ledger/ledger.ts';
import { fingerprint } from './fingerprint.ts';
import type { LiveBuild } from './liveBuild.ts';
import { happenedAtCorrected } from './times.ts';
import type { ReadBody } from './wireCommand.ts';

export type Taken = { readonly status: number; readonly text: string };

/**
 * Takes one command: decides, keeps entries and receipt together, shows them, and answers. The same id again gets
 * the kept answer and changes nothing. Rejects when it could not be kept; the device may then send the same
 * again.
 */
export function takeCommand(
  { live, ledger, readBody }: { live: LiveBuild; ledger: Ledger; readBody: ReadBody },
  author: Author,
  request: CommandRequest,
  receivedAt: string,
): Promise<Taken> {
  return live.serial(async () => {
    const { id } = request;
    const print = fingerprint(request, author);
    const known = await ledger.receipt(live.build, id);
    if (known) return known.request === print ? known : idUsedOtherwise(id);

    const answer = (receipt: Receipt): StoredReceipt => ({
      id,
      request: print,
      status: receipt.outcome === 'recorded' ? 200 : refusalStatus[receipt.code],
      text: JSON.stringify(receipt),
    });
    const refuse = async (reason: RefusalReply | Refusal): Promise<Taken> => {
      const receipt = answer({ id, outcome: 'refused', ...reason });
      await live.keep([], receipt);
      return receipt;
    };

    const body = readBody(live, request);
    if (!body.ok) return refuse(body.reason);
    const { kind, saidBy } = request;
    const command = {
      id,
      kind,
      body: body.value,
      by: author,
      ...(saidBy !== undefined && { saidBy }),
      happenedAt: happenedAtCorrected(request, receivedAt),
      receivedAt,
    } as Command;
    const decision = decide(live.state, command);
    if (!decision.ok) return refuse(decision.reason);

    const [own] = decision.value;
    if (!own) throw new Error(`${kind} was granted but left no entry`);
    const entry = live.state.number + 1;
    const receipt = answer({ id, outcome: 'recorded', entry, breaches: [...(own.breaches ?? [])] });
    await live.keep(decision.value, receipt);
    return receipt;
  });
}

/** Not kept: the id already has its receipt. */
function idUsedOtherwise(id: string): Taken {
  const reason = refusal(
    'id-used-otherwise',
    'This id was already used for something else. Send it again as a new command with an id of its own.',
  );
  const receipt: Receipt = { id, outcome: 'refused', ...reason };
  return { status: refusalStatus[reason.code], text: JSON.stringify(receipt) };
}
