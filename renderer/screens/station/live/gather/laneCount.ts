import { useState } from "react";
import { mostLanes } from "../../../../../electron/domain/heats/heat.ts";
import { definitionOf, type TestCode } from "../../../../../electron/domain/tests/registry.ts";

/** Returns the number of lanes of a station, a choice kept on this desk. */
export function useLaneCount(test: TestCode): {
  readonly lanes: number;
  readonly setLanes: (lanes: number) => void;
} {
  const place = `live.lanes.${test}`;
  const [lanes, set] = useState(() => {
    const kept = Number(localStorage.getItem(place) ?? Number.NaN);
    return kept >= 1 && kept <= mostLanes ? Math.floor(kept) : definitionOf(test).figures.lanes;
  });
  function setLanes(wanted: number): void {
    const count = Math.min(mostLanes, Math.max(1, wanted));
    localStorage.setItem(place, String(count));
    set(count);
  }
  return { lanes, setLanes };
}
