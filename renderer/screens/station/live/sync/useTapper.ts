import { useEffect, useRef } from "react";
import { useInitials } from "../../../../app/initials.tsx";
import type { LiveHeat } from "../../../../tests/live/types.ts";
import { setTapper, tapperOf } from "./heatOutboxes.ts";

/**
 * Sets the initials of a heat's taps. Whoever gathered it has given them; after a crash in the middle they are the last
 * tapper's, or the gatherer's: a question would take the keys that stop the lanes, and only old heats come to one. Taps wait for them, their times do not.
 */
export function useTapper(heat: LiveHeat): void {
  const { initials, ask } = useInitials();
  const asked = useRef(false);
  const { heatId, events, state, gatheredBy } = heat;
  const last = events.at(-1)?.by ?? (gatheredBy === "" ? null : gatheredBy);
  useEffect(() => {
    if (tapperOf(heatId) !== null) return;
    const known = initials ?? last;
    if (known !== null) return setTapper(heatId, known);
    if (state !== "running" || asked.current) return;
    asked.current = true;
    void ask().then((by) => {
      if (by !== null) setTapper(heatId, by);
    });
  }, [heatId, state, initials, last, ask]);
}
