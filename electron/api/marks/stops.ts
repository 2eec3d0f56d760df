import { stopsTold } from "../../domain/marks/stopped.ts";
import { definitionOf } from "../../domain/tests/registry.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type EarlierMark, lastStopped } from "../../store/reads/earlier-marks.ts";
import type { Day } from "../../store/tables/days.ts";
import { type KeptMark, parametersOf } from "../../store/tables/marks.ts";

/**
 * Says how far somebody came beside last time, where they stopped now or then; null where both were finished.
 * @param last the last finished mark before; undefined without one
 */
export function tellStop(
  db: ReadableDb,
  day: Day,
  kept: KeptMark,
  last: EarlierMark | undefined,
): Sentence | null {
  if (definitionOf(kept.test).repsDone === undefined) return null;
  const parameters = parametersOf(db, day.id, kept.test);
  const stopped = lastStopped(db, day, kept);
  const isLast = stopped !== undefined && (last === undefined || last.date < stopped.date);
  if (isLast) return stopsTold(kept.test, parameters, kept.mark, stopped.mark);
  if (kept.mark.state !== "unfinished" || last === undefined) return null;
  return stopsTold(kept.test, parameters, kept.mark, { state: "complete", value: last.value });
}
