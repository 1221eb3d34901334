/** Sends one request; rejects when the other side cannot be reached. */
export type Network = (path: string, options: RequestInit) => Promise<Response>;

export const deviceNetwork: Network = (path, options) => fetch(path, options);
