import { useSyncExternalStore } from "react";

/** A value that lives as long as the window: anybody may change it, and components show it. */
export interface Cell<Value> {
  get(): Value;
  set(value: Value): void;
  /** Returns the value in a component, which renders again whenever it changes. */
  use(): Value;
}

export function createCell<Value>(first: Value): Cell<Value> {
  const listeners = new Set<() => void>();
  let value = first;
  function subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }
  return {
    get: () => value,
    set(next) {
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of listeners) listener();
    },
    use: () => useSyncExternalStore(subscribe, () => value),
  };
}

/** Makes a cell kept in the browser's storage under `key`; `read` interprets the stored text. */
export function keptCell<Value extends string>(
  storage: Storage,
  key: string,
  read: (kept: string | null) => Value,
): Cell<Value> {
  const cell = createCell(read(storage.getItem(key)));
  return {
    ...cell,
    set(next) {
      storage.setItem(key, next);
      cell.set(next);
    },
  };
}
