import { useSyncExternalStore } from "react";

/** A value that lives as long as the window: what a tool's keys change and its parts show. */
export interface Cell<Value> {
  get(): Value;
  set(value: Value): void;
  /** The value in a part that renders again whenever it changes. */
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
