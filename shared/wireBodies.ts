import { Type } from 'typebox';
import { Ground } from '#domain/bridge/ground.ts';
import { bodies, type CommandKind } from '#domain/progress/command.ts';

/** A build is opened by a request of its own, so `open-build` is no command on the wire. */
export type WireKind = Exclude<CommandKind, 'open-build'>;

/** What a leader wants other than what the rules choose. */
export const BridgeWish = Type.Object(
  {
    bays: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
    nose: Type.Optional(Type.Integer({ minimum: 0, maximum: 100 })),
  },
  { additionalProperties: false },
);

const { 'open-build': _opening, ...asInDomain } = bodies;

/**
 * Bodies of commands as devices send them. They are the domain's, but for two that name a result of the server
 * instead of carrying it: the bridge is designed, and the plan looked up, on the server.
 */
export const wireBodies = {
  ...asInDomain,
  'choose-bridge': Type.Object(
    {
      ground: Ground,
      /** Name of the kit. */
      kit: Type.String({ minLength: 1, maxLength: 64 }),
      wish: Type.Optional(BridgeWish),
    },
    { additionalProperties: false },
  ),
  'accept-plan': Type.Object(
    { proposal: Type.String({ pattern: '^[0-9a-f]{32}$' }) },
    { additionalProperties: false },
  ),
} as const;

export const wireKinds = Object.keys(wireBodies) as WireKind[];
