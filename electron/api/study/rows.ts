import type { StudyRow } from "../../domain/study/shape.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { marksForStudy } from "../../store/reads/study-marks.ts";
import { type Study, type StudySeries, seriesOf } from "../../store/tables/studies.ts";
import { standingReadings } from "../../store/tables/study-readings.ts";

/** A study with its series, and a row for each athlete who takes part. */
export interface ReadStudy {
  readonly study: Study;
  readonly series: readonly StudySeries[];
  readonly rows: readonly StudyRow[];
}

/** Reads a study's series, and of each the readings that count by athlete, in grains. */
export function readingsBySeries(db: ReadableDb, study: Study) {
  const series = seriesOf(db, study.id);
  const brought = standingReadings(db, study.id);
  const columns = series.map(({ position, dayId, judge }) => {
    const own =
      dayId === null
        ? brought.filter((reading) => reading.position === position)
        : marksForStudy(db, { dayId, judge, test: study.test, variant: study.variant });
    return new Map(own.map(({ athleteId, value }) => [athleteId, value]));
  });
  return { series, columns, brought };
}

/**
 * Reads a study's readings. Athletes take part who have a brought reading, or of two days any mark: a day's other marks
 * lack nothing.
 */
export function readStudy(db: ReadableDb, study: Study): ReadStudy {
  const { series, columns, brought } = readingsBySeries(db, study);
  const isOfMarks = series.every(({ dayId }) => dayId !== null);
  const taking = isOfMarks
    ? columns.flatMap((column) => [...column.keys()])
    : brought.map(({ athleteId }) => athleteId);
  const rows = [...new Set(taking)].map((athleteId) => ({
    athleteId,
    values: columns.map((column) => column.get(athleteId) ?? null),
  }));
  return { study, series, rows };
}
