/** Mints ids of commands: 128 bit, 32 hex digits, never the same twice. */
export type Ids = { readonly mint: () => string };

export const deviceIds: Ids = {
  // getRandomValues also works where the page is served without HTTPS; randomUUID does not.
  mint: () =>
    [...crypto.getRandomValues(new Uint8Array(16))]
      .map((byte) => byte.toString(16).padStart(2, '0'))
      .join(''),
};
