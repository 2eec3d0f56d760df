import type { TypicalError } from "../../domain/statistics/change.ts";
import { type MarkNews, newsOf } from "../../domain/statistics/news.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import {
  type EarlierMark,
  earlierMarks,
  type KeptMark,
  marksOfAthlete,
  marksOfDay,
} from "../../store/tables/marks.ts";
import { type TypicalErrors, typicalErrorsOf } from "../noise/errors.ts";

/** A mark of the day with its place in the athlete's own history; no news while it is incomplete. */
export interface MarkWithNews extends KeptMark {
  readonly news: MarkNews | null;
}

/**
 * Returns all marks of a day, or of one athlete on it, in order of appearance, each with its news, judged by `errors`
 * (by default those of the current store).
 */
export function tellMarks(
  db: ReadableDb,
  day: Day,
  athleteId: number | null = null,
  errors: TypicalErrors = typicalErrorsOf(db),
): MarkWithNews[] {
  const marks = athleteId === null ? marksOfDay(db, day.id) : marksOfAthlete(db, day.id, athleteId);
  const history = Map.groupBy(earlierMarks(db, day, athleteId), historyKey);
  return marks.map((kept) => ({
    ...kept,
    news: tell(kept, history.get(historyKey(kept)) ?? [], errors[kept.test]),
  }));
}

function tell(kept: KeptMark, earlier: readonly EarlierMark[], error: TypicalError): MarkNews | null {
  return kept.mark.state === "complete" ? newsOf(kept.test, kept.mark.value, earlier, error) : null;
}

/** Returns the key of marks that compare: one athlete and one fingerprint. */
function historyKey(mark: { readonly athleteId: number; readonly fingerprint: string }): string {
  return `${mark.athleteId} ${mark.fingerprint}`;
}
