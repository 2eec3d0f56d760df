import { stopsTold } from "../../domain/marks/stopped.ts";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import { type EarlierMark, type KeptMark, parametersOf, stoppedMarks } from "../../store/tables/marks.ts";
import { historyKey } from "./history-key.ts";

/** Says how far somebody came beside last time, where they stopped now or then; null where both were finished. */
export type TellStops = (mark: KeptMark, last: EarlierMark | undefined) => Sentence | null;

/** Returns what tells these marks' stops; the marks of before are read once for all, and only where one can stop. */
export function stopsOf(
  db: ReadableDb,
  day: Day,
  marks: readonly KeptMark[],
  athleteId: number | null,
): TellStops {
  if (!marks.some(({ test }) => definitionOf(test).repsDone !== undefined)) return () => null;
  const before = new Map(stoppedMarks(db, day, athleteId).map((stopped) => [historyKey(stopped), stopped]));
  const parameters = new Map<TestCode, unknown>();
  const parametersFor = (test: TestCode) => {
    if (!parameters.has(test)) parameters.set(test, parametersOf(db, day.id, test));
    return parameters.get(test);
  };
  return (kept, last) => {
    const stopped = before.get(historyKey(kept));
    const isLast = stopped !== undefined && (last === undefined || last.date < stopped.date);
    if (isLast) return stopsTold(kept.test, parametersFor(kept.test), kept.mark, stopped.mark);
    if (kept.mark.state !== "unfinished" || last === undefined) return null;
    const finished = { state: "complete" as const, value: last.value };
    return stopsTold(kept.test, parametersFor(kept.test), kept.mark, finished);
  };
}
