import type { Known } from "../../domain/plan/hall.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";

/** Returns what earlier days of this store tell of the stations' times; a station of which too few turns are known is not in it. */
export function knownOf(_db: ReadableDb, _day: Day): Known[] {
  return [];
}
