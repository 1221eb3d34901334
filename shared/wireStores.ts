import { type Static, Type } from 'typebox';

const closed = { additionalProperties: false } as const;
const text = Type.String();
const number = Type.Number();
const orNone = <Of extends Parameters<typeof Type.Union>[0][number]>(of: Of) =>
  Type.Union([of, Type.Null()]);

const Spread = Type.Object({ p10: number, p50: number, p90: number }, closed);
const Counted = Type.Array(Type.Object({ part: text, count: Type.Integer() }, closed));

/** One load: what is on it, when it is wanted, and what it does to the opening when it is late. Minutes after the start. */
export const StoresLoad = Type.Object(
  {
    load: text,
    name: text,
    /** Id, name and count of each part on it; empty where no kit says. */
    carries: Type.Array(Type.Object({ id: text, part: text, count: Type.Integer() }, closed)),
    /** When it was planned for, and when it came or is expected now. */
    planned: number,
    expected: number,
    here: Type.Boolean(),
    /** First task that uses it. */
    firstTask: orNone(text),
    /** By plan: when that starts, and the latest arrival that keeps the opening. */
    needed: orNone(number),
    latest: orNone(number),
    /** Over the draws of the forecast: when its first task would want it; the latest arrival that keeps a draw's opening. */
    wanted: orNone(Spread),
    latestDrawn: orNone(Spread),
    /** So many minutes later than expected now: the opening by plan, and minutes later on average over the draws. */
    ifLate: Type.Array(
      Type.Object({ by: number, opens: number, laterOnAverage: orNone(number) }, closed),
    ),
  },
  closed,
);
export type StoresLoad = Static<typeof StoresLoad>;

/** Parts, stacks, carrying and packing of the bridge. Metres, kilograms and minutes. */
export const StoresOfKit = Type.Object(
  {
    kilograms: number,
    walk: number,
    carrying: Type.Array(
      Type.Object(
        {
          part: text,
          count: Type.Integer(),
          carriers: Type.Integer(),
          share: number,
          minutes: orNone(number),
          teamMinutes: orNone(number),
          personMinutes: orNone(number),
          warnings: Type.Array(text),
        },
        closed,
      ),
    ),
    stacks: Type.Array(
      Type.Object(
        {
          group: text,
          side: Type.Union([Type.Literal('left'), Type.Literal('right')]),
          from: number,
          to: number,
          kilograms: number,
          walk: number,
        },
        closed,
      ),
    ),
    deck: orNone(Type.Object({ metres: number, round: number, teams: Type.Integer() }, closed)),
    packing: orNone(
      Type.Object(
        {
          pallets: Type.Array(
            Type.Object(
              {
                name: text,
                parts: Counted,
                kilograms: number,
                loaded: number,
                bed: number,
                firstTask: text,
              },
              closed,
            ),
          ),
          trucks: Type.Array(
            Type.Object(
              {
                parts: Counted,
                pallets: Type.Array(text),
                kilograms: number,
                loaded: number,
                bed: number,
                firstTask: text,
              },
              closed,
            ),
          ),
          tooBig: Type.Array(text),
        },
        closed,
      ),
    ),
    /** What a truck takes: kilograms, and square metres of bed. */
    truck: orNone(Type.Object({ mass: number, bed: number }, closed)),
  },
  closed,
);
export type StoresOfKit = Static<typeof StoresOfKit>;

/** GET /api/builds/:build/stores. `kit` is null for a build without a bridge, or whose kit is not here as it was. */
export const StoresReply = Type.Object(
  { kit: orNone(StoresOfKit), loads: Type.Array(StoresLoad), draws: Type.Integer() },
  closed,
);
export type StoresReply = Static<typeof StoresReply>;
