import { type TProperties, Type } from 'typebox';

/** An object that has these properties and no others. */
export function strict<Properties extends TProperties>(properties: Properties) {
  return Type.Object(properties, { additionalProperties: false });
}

export const number = Type.Number();
/** The number of an entry of the record. */
export const entry = Type.Integer({ minimum: 0 });
export const text = Type.String();
export const textOrNone = Type.Union([Type.String(), Type.Null()]);
export const numberOrNone = Type.Union([Type.Number(), Type.Null()]);
