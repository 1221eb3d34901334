/** Small texts kept on the device between visits. Losing them must never lose a fact. */
export type Storage = {
  readonly read: (key: string) => string | null;
  readonly write: (key: string, value: string) => void;
};

/** The browser's store; where it is closed to us (private windows), nothing is kept. */
export const deviceStorage: Storage = {
  read: (key) => {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  },
  write: (key, value) => {
    try {
      localStorage.setItem(key, value);
    } catch {
      // What is kept here is a convenience: the page works without it.
    }
  },
};
