import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Study, type StudySeries, seriesOf, studyById } from "../../store/tables/studies.ts";

/** @throws Refusal `not-found` */
export function requireStudy(db: ReadableDb, id: string): Study {
  const study = studyById(db, id);
  if (study === undefined) throw new Refusal("not-found", sentence("study.unknown"));
  return study;
}

/**
 * Returns a study, and its series that readings are brought for.
 * @throws Refusal `not-found`; `conflict` for one whose readings are the marks of a day
 */
export function requireSeries(
  db: ReadableDb,
  { studyId, position }: { readonly studyId: string; readonly position: number },
): { study: Study; series: StudySeries } {
  const study = requireStudy(db, studyId);
  const series = seriesOf(db, studyId).find((each) => each.position === position);
  if (series === undefined) throw new Refusal("not-found", sentence("study.unknownSeries"));
  if (series.dayId !== null) throw new Refusal("conflict", sentence("study.ofMarks"));
  return { study, series };
}
