import { areAlike, fewTrials, madeOtherwise } from "../../domain/marks/otherwise.ts";
import type { TypicalError } from "../../domain/statistics/change.ts";
import { type MarkNews, newsOf } from "../../domain/statistics/news.ts";
import type { Sentence } from "../../domain/words.ts";
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
  /** In what it was made otherwise than the mark that it is compared with. */
  readonly beside: readonly Sentence[];
  /** True if the best before is of as many trials, so that the gain over it can be judged. */
  readonly isFairBest: boolean;
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
    ...tell(kept, history.get(historyKey(kept)) ?? [], errors[kept.test]),
  }));
}

type ToldBeside = Pick<MarkWithNews, "news" | "beside" | "isFairBest">;

function tell(kept: KeptMark, earlier: readonly EarlierMark[], error: TypicalError): ToldBeside {
  const { test, mark, made } = kept;
  if (mark.state !== "complete") return { news: null, beside: [], isFairBest: true };
  const news = newsOf(test, mark.value, earlier, error);
  const now = { ...made, trials: fewTrials(mark) };
  const last = earlier.at(-1);
  const best = earlier.find(({ value }) => value === news.bestBefore);
  return {
    news: last === undefined || areAlike(now, last.made) ? news : { ...news, change: null, verdict: null },
    beside: last === undefined ? [] : madeOtherwise(now, last.made),
    isFairBest: best === undefined || areAlike(now, best.made),
  };
}

/** Returns the key of marks that compare: one athlete and one fingerprint. */
function historyKey(mark: { readonly athleteId: number; readonly fingerprint: string }): string {
  return `${mark.athleteId} ${mark.fingerprint}`;
}
