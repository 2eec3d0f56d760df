import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Day, dayAtHand } from "../../store/tables/days.ts";
import { allStudies, type Study, type StudySeries, seriesOf } from "../../store/tables/studies.ts";

/** A study of the day that wants readings, and the series that they are brought for. */
interface StudyToRead {
  readonly study: Study;
  readonly brought: readonly StudySeries[];
}

/** Returns the study that a second judge of a test reads for, the newest of the day; null where none was planned. */
export function studyToRead(db: ReadableDb, day: Day, test: TestCode): StudyToRead | null {
  for (const study of allStudies(db)) {
    if (study.kind !== "judges" || study.dayId !== day.id || study.test !== test) continue;
    const brought = seriesOf(db, study.id).filter(({ dayId }) => dayId === null);
    if (brought.length > 0) return { study, brought };
  }
  return null;
}

/** Returns the tests at whose stations a second judge can read now: the day is open, and a study of it wants readings. */
export function testsToRead(db: ReadableDb): TestCode[] {
  const day = dayAtHand(db);
  if (day === undefined || day.state !== "open") return [];
  return testCodes.filter((test) => studyToRead(db, day, test) !== null);
}

/** Returns whether this is the study that a second judge at a station reads for now. */
export function isReadAtStation(db: ReadableDb, { id, test }: Study): boolean {
  const day = dayAtHand(db);
  return day?.state === "open" && studyToRead(db, day, test)?.study.id === id;
}
