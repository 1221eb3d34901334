import heron from './heron.json';

/** The kits that come with the program, by name, as their files stand; `readKit` checks one before it is used. */
export const kits: Readonly<Record<string, unknown>> = { heron };
