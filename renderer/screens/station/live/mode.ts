import { useState } from "react";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { LiveHeat } from "../../../tests/live/types.ts";

/** How a station works: its test is run here, or its results are keyed from paper. */
export type Mode = "live" | "paper";

export interface StationMode {
  /** Null until it is known whether a heat runs. */
  readonly mode: Mode | null;
  readonly setMode: (mode: Mode) => void;
}

/** True while somebody in a heat is still going: its keys and its clock must be in front. */
function isGoing(heat: LiveHeat | null): boolean {
  return heat?.state === "running" && !heat.allDone;
}

/**
 * Returns how a test's station works in this window: as chosen there last, kept for the session, and live until somebody
 * chooses paper. A station whose heat runs opens on it, whatever was chosen before.
 * @param heat the heat of this test at hand; undefined until that is known
 */
export function useMode(test: TestCode, heat: LiveHeat | null | undefined): StationMode {
  const place = `station.mode.${test}`;
  const [mode, set] = useState<Mode | null>(null);
  // Decided once, when the station opens: the end of its heat must not turn the screen over.
  if (mode === null && heat !== undefined) {
    set(sessionStorage.getItem(place) === "paper" && !isGoing(heat) ? "paper" : "live");
  }
  function setMode(chosen: Mode): void {
    sessionStorage.setItem(place, chosen);
    set(chosen);
  }
  return { mode, setMode };
}
