import type { DayState } from "./day-state.ts";
import { at } from "./numbers.ts";
import type { DayPlan, PlannedTurn } from "./told.ts";

/** Returns all turns of a simulated day in the order in which they start. */
export function turnsIn(state: DayState): PlannedTurn[] {
  const turns = state.floor.athletes.flatMap(({ id }, athlete) =>
    state.floor.hall.stations.flatMap(({ test }, station): PlannedTurn[] => {
      const row = athlete * state.floor.stations + station;
      const from = at(state.starts, row);
      if (Number.isNaN(from)) return [];
      return [{ athlete: id, test, place: at(state.places, row), from, until: at(state.ends, row) }];
    }),
  );
  return turns.sort((a, b) => a.from - b.from || a.place - b.place);
}

/** Returns how long athletes of a simulated day waited, rested, until they started: over all their tests, in seconds. */
export function waitsIn({ starts, readied }: DayState): DayPlan["waits"] {
  let [sum, count, longest] = [0, 0, 0];
  for (let row = 0; row < starts.length; row += 1) {
    const wait = at(starts, row) - at(readied, row);
    if (Number.isNaN(wait)) continue;
    [sum, count, longest] = [sum + wait, count + 1, Math.max(longest, wait)];
  }
  return { mean: count === 0 ? 0 : sum / count, longest };
}
