/** A value that can be watched. */
export type Readable<Value> = {
  readonly read: () => Value;
  readonly subscribe: (listener: () => void) => () => void;
};

export type Cell<Value> = Readable<Value> & { readonly write: (value: Value) => void };

/** Holds one value and tells the listeners when it changes. */
export function createCell<Value>(first: Value): Cell<Value> {
  let value = first;
  const listeners = new Set<() => void>();
  return {
    read: () => value,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    write: (next) => {
      value = next;
      for (const listener of listeners) listener();
    },
  };
}
