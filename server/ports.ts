import { randomBytes, randomInt } from 'node:crypto';

/** The time, as the server knows it. */
export type Clock = { now(): Date };

/** Where names and secrets come from. */
export type Ids = {
  /** Short and safe in an address: ten letters and digits. */
  short(): string;
  /** 128 bit as 32 hex digits, like the ids that devices mint. */
  long(): string;
  /** 144 bit, base64url. */
  secret(): string;
};

export const systemClock: Clock = { now: () => new Date() };

/** Without vowels and look-alikes: no words by accident, nothing to misread. */
const letters = '23456789bcdfghjkmnpqrstvwxz';

export const randomIds: Ids = {
  short: () => Array.from({ length: 10 }, () => letters[randomInt(letters.length)]).join(''),
  long: () => randomBytes(16).toString('hex'),
  secret: () => randomBytes(18).toString('base64url'),
};
