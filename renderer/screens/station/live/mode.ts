import { useSyncExternalStore } from "react";

/** How a station works: its test is run here, or its results are keyed from paper. */
export type Mode = "live" | "paper";

const place = "station.mode";
const listeners = new Set<() => void>();

function current(): Mode {
  return sessionStorage.getItem(place) === "paper" ? "paper" : "live";
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Returns how this window's stations work; kept for the session, live until somebody chooses paper. */
export function useMode(): { readonly mode: Mode; readonly setMode: (mode: Mode) => void } {
  const mode = useSyncExternalStore(listen, current);
  function setMode(chosen: Mode): void {
    sessionStorage.setItem(place, chosen);
    for (const listener of listeners) listener();
  }
  return { mode, setMode };
}
