import { type Static, Type } from 'typebox';
import { Bridge } from '#domain/bridge/bridge.ts';
import { Ground } from '#domain/bridge/ground.ts';
import { bodies } from '#domain/progress/command.ts';
import { Work } from '#domain/tasks/work.ts';
import { CommandId, Instant } from './instant.ts';
import { ForecastFrame, NewLink } from './wire.ts';
import { BridgeWish } from './wireBodies.ts';

const closed = { additionalProperties: false } as const;

/** A ground, a kit and perhaps a wish: what a bridge is designed from. */
export const BridgeRequest = Type.Object(
  {
    ground: Ground,
    kit: Type.String({ minLength: 1, maxLength: 64 }),
    wish: Type.Optional(BridgeWish),
  },
  closed,
);
export type BridgeRequest = Static<typeof BridgeRequest>;

/** GET /api/kits */
export const KitListed = Type.Object(
  {
    name: Type.String(),
    title: Type.String(),
    manner: Bridge.properties.manner,
    notForUse: Type.Boolean(),
    hash: Type.String(),
  },
  closed,
);
export type KitListed = Static<typeof KitListed>;

const table = Type.String({ maxLength: 500_000 });

/** What a new build starts from. */
export const BuildSource = Type.Union([
  Type.Object({ kind: Type.Literal('bridge'), ...BridgeRequest.properties }, closed),
  /** Texts of CSV tables. */
  Type.Object(
    {
      kind: Type.Literal('tables'),
      tasks: table,
      links: Type.Optional(table),
      crews: Type.Optional(table),
      equipment: Type.Optional(table),
    },
    closed,
  ),
  /** A whole order of work, with all that tables have no columns for: room, banks, stores, the dark, crossing. */
  Type.Object({ kind: Type.Literal('work'), work: Work }, closed),
  Type.Object({ kind: Type.Literal('empty') }, closed),
]);
export type BuildSource = Static<typeof BuildSource>;

const { name, unit, zone, confidence } = bodies['open-build'].properties;

/** POST /api/builds. `id` is minted once on the device: the same id never opens a second build. */
export const OpenRequest = Type.Object(
  {
    id: CommandId,
    name,
    unit,
    start: Instant,
    askedFor: Type.Union([Instant, Type.Null()]),
    zone,
    confidence,
    source: BuildSource,
  },
  closed,
);
export type OpenRequest = Static<typeof OpenRequest>;

/** A build just opened, with the links of its people: shown once. */
export const OpenedBuild = Type.Object(
  { build: Type.String(), links: Type.Array(NewLink) },
  closed,
);
export type OpenedBuild = Static<typeof OpenedBuild>;

/** One build in the host's list. */
export const BuildListed = Type.Object(
  {
    build: Type.String(),
    name: Type.String(),
    unit: Type.String(),
    start: Type.String(),
    zone: Type.String(),
    /** Number of the last entry. */
    number: Type.Integer(),
  },
  closed,
);
export type BuildListed = Static<typeof BuildListed>;

/** POST /api/demo */
export const DemoRequest = Type.Object(
  { how: Type.Optional(Type.Union([Type.Literal('fresh'), Type.Literal('half-built')])) },
  closed,
);
export type DemoRequest = Static<typeof DemoRequest>;

/** GET /api/builds/:build/record?after=N&limit=N: exact texts, and hashes to check them by. */
export const RecordPage = Type.Object(
  {
    build: Type.String(),
    /** Where the record ends now. */
    head: Type.Object({ number: Type.Integer(), hash: Type.String() }, closed),
    entries: Type.Array(
      Type.Object({ number: Type.Integer(), text: Type.String(), hash: Type.String() }, closed),
    ),
  },
  closed,
);
export type RecordPage = Static<typeof RecordPage>;

/** GET /api/builds/:build/forecasts: what was sent up, oldest first. */
export const ToldForecasts = Type.Object({ told: Type.Array(ForecastFrame) }, closed);
export type ToldForecasts = Static<typeof ToldForecasts>;
