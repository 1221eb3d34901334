import { type Static, Type } from 'typebox';

/**
 * One thing wrong in a file or a form that a person wrote.
 * `path` locates it in a JSON file (`/bays/length`); `row` and `column` in a table (row 1 is the header).
 */
export const Fault = Type.Object(
  {
    file: Type.Optional(Type.String()),
    path: Type.Optional(Type.String()),
    row: Type.Optional(Type.Integer()),
    column: Type.Optional(Type.String()),
    found: Type.String(),
    expected: Type.String(),
  },
  { additionalProperties: false },
);
export type Fault = Static<typeof Fault>;
