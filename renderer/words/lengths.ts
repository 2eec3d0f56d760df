import { useSyncExternalStore } from "react";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";

const place = "lengths";
const listeners = new Set<() => void>();

function current(): LengthUnit {
  return localStorage.getItem(place) === "in" ? "in" : "cm";
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The unit in which this desk reads and writes lengths; kept from day to day. */
export function useLengths(): { lengths: LengthUnit; setLengths: (lengths: LengthUnit) => void } {
  const lengths = useSyncExternalStore(listen, current);
  function setLengths(chosen: LengthUnit): void {
    localStorage.setItem(place, chosen);
    for (const listener of listeners) listener();
  }
  return { lengths, setLengths };
}
