import type { CommandBody } from '#domain/progress/command.ts';
import { refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import type { CommandRequest, RefusalReply } from '#shared/wire.ts';
import { type WireKind, wireBodies, wireKinds } from '#shared/wireBodies.ts';
import { formReader } from '../form.ts';
import { designWork, type Kits } from '../kits.ts';
import type { LiveBuild } from './liveBuild.ts';
import type { Proposals } from './proposals.ts';

/** Turns the body of a command on the wire into the body that the domain takes. */
export type ReadBody = (
  live: LiveBuild,
  request: CommandRequest,
) => Result<CommandBody<WireKind>, RefusalReply>;

const readers = Object.fromEntries(
  wireKinds.map((kind) => [kind, formReader(wireBodies[kind])]),
) as { readonly [Kind in WireKind]: ReturnType<typeof formReader<(typeof wireBodies)[Kind]>> };

/** Reads bodies: checks their form, looks proposals up, designs bridges. */
export function bodyReader(kits: Kits, proposals: Proposals): ReadBody {
  return (live, { kind, body }) => {
    if (kind === 'accept-plan') {
      const form = readers[kind](body);
      if (!form.ok) return bad(formWrong(kind, form.reason));
      const kept = proposals.find(live.build, form.value.proposal);
      if (!kept) {
        return bad(
          refusal('proposal-unknown', 'This plan is no longer kept here. Plan again, then accept.'),
        );
      }
      const { work, plan, basis, gain } = kept;
      return good({ work, plan, basis, gain });
    }
    if (kind === 'choose-bridge') {
      const form = readers[kind](body);
      if (!form.ok) return bad(formWrong(kind, form.reason));
      const { ground } = form.value;
      const designed = designWork(kits, form.value);
      return designed.ok ? good({ ground, ...designed.value }) : designed;
    }
    const form = readers[kind](body);
    return form.ok ? good(form.value) : bad(formWrong(kind, form.reason));
  };
}

function formWrong(kind: WireKind, faults: RefusalReply['faults'] & object): RefusalReply {
  return {
    ...refusal('form-wrong', `The body of "${kind}" is not as it should be: see the faults.`),
    faults,
  };
}
