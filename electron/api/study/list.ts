import { athletesForError } from "../../domain/study/needed.ts";
import { fewestSeries, mostSeries, wholeRows } from "../../domain/study/shape.ts";
import { protocolOf, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { marksForStudy, whoEntered } from "../../store/reads/study-marks.ts";
import { allDays, dayById } from "../../store/tables/days.ts";
import { allStudies } from "../../store/tables/studies.ts";
import { readStudy } from "./rows.ts";

/** Returns all studies, the newest first, and what a new one can be planned with. */
export function listStudies(db: ReadableDb) {
  return { studies: allStudies(db).map((study) => summed(db, study)), days: daysWithMarks(db), enough };
}

/** How many athletes tell the typical error to within 20 %, by the number of series. */
const enough = Array.from({ length: mostSeries - fewestSeries + 1 }, (_, index) => ({
  series: fewestSeries + index,
  athletes: athletesForError(fewestSeries + index),
}));

function summed(db: ReadableDb, study: ReturnType<typeof allStudies>[number]) {
  const { series, rows } = readStudy(db, study);
  const { id, test, variant, kind, dayId, aim, at } = study;
  const date = dayId === null ? null : (dayById(db, dayId)?.date ?? null);
  const judges = series.map(({ judge }) => judge).filter((judge) => judge !== "");
  return {
    id,
    test,
    variant,
    kind,
    aim,
    at,
    date,
    judges,
    athletes: rows.length,
    whole: wholeRows(rows).length,
  };
}

/** Returns the days that were opened, with the tests of which they have complete marks, and how many each judge entered. */
function daysWithMarks(db: ReadableDb) {
  const ways = testCodes.flatMap((test) => protocolOf(test).variants.map((variant) => ({ test, variant })));
  return allDays(db).flatMap(({ id, date, title, state }) => {
    if (state === "planned") return [];
    const marks = ways.map((way) => ({ ...way, judges: judgesOf(db, { dayId: id, ...way }) }));
    return [{ id, date, title, marks: marks.filter(({ judges }) => judges.length > 0) }];
  });
}

/** Returns who alone entered results of a day in one test and variant, with how many; who entered most comes first. */
function judgesOf(db: ReadableDb, which: Parameters<typeof whoEntered>[1]) {
  return whoEntered(db, which)
    .map((judge) => ({ judge, count: marksForStudy(db, { ...which, judge }).length }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
}
