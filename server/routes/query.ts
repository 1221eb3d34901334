import { Type } from 'typebox';

/** A whole number in a query. It stays text until the handler: nothing is converted on the way in. */
export const count = Type.String({ pattern: '^\\d{1,9}$' });
