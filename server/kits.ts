import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge, type Wish } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import { readGround } from '#domain/bridge/readGround.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { refusal } from '#domain/refusal.ts';
import { bad, good, type Result } from '#domain/result.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { RefusalReply } from '#shared/wire.ts';

/** A kit and the hash of its text, which the record names. */
export type HashedKit = { readonly kit: Kit; readonly hash: string };

/** The kits of this server by name. */
export type Kits = ReadonlyMap<string, HashedKit>;

/** What a leader asks for: a ground, a kit and perhaps a wish. */
export type DesignRequest = {
  readonly ground: Ground;
  readonly kit: string;
  readonly wish?: Wish;
};

/** Designs the bridge and expands its order of work; every limit that binds comes back in one refusal. */
export function designWork(
  kits: Kits,
  { ground, kit: name, wish }: DesignRequest,
): Result<{ readonly bridge: Bridge; readonly work: Work; readonly kit: Kit }, RefusalReply> {
  const asked = askedFor(kits, ground, name);
  if (!asked.ok) return asked;
  const found = asked.value;
  const bridge = designBridge(ground, found.kit, found.hash, wish);
  if (!bridge.ok) {
    const sentence = bridge.reason.map((limit) => limit.sentence).join(' ');
    const of = bridge.reason.flatMap((limit) => limit.of ?? []);
    return bad(refusal('bridge-impossible', sentence, [...new Set(of)]));
  }
  const work = orderOfWork(bridge.value, found.kit);
  return work.ok ? good({ bridge: bridge.value, work: work.value, kit: found.kit }) : work;
}

/** The kit that is asked for, if it is here and the ground can be read. */
export function askedFor(
  kits: Kits,
  ground: Ground,
  name: string,
): Result<HashedKit, RefusalReply> {
  const found = kits.get(name);
  if (!found) return bad(unknownKit(kits, name));
  const read = readGround(ground);
  if (read.ok) return good(found);
  const sentence = 'The ground is not as it should be. Mend what the faults name.';
  return bad({ ...refusal('form-wrong', sentence), faults: read.reason });
}

/** The refusal for a kit of a name that this server does not have. */
export function unknownKit(kits: Kits, name: string): RefusalReply {
  const known = [...kits.keys()].join(', ');
  return refusal('kit-unknown', `There is no kit "${name}" here. Choose one of: ${known}.`, [name]);
}
