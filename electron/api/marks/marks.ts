import { besideChange, fairNewsOf } from "../../domain/marks/fair-news.ts";
import { areAlike, fewTrials } from "../../domain/marks/otherwise.ts";
import type { MarkNews } from "../../domain/statistics/news.ts";
import type { Variation, Variations } from "../../domain/statistics/variation.ts";
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
import { variationsOf } from "../noise/errors.ts";

/** A mark of the day with its place in the athlete's own history; no news while it is incomplete. */
export interface MarkWithNews extends KeptMark {
  readonly news: MarkNews | null;
  /** In what it was made otherwise than the mark that it is compared with, and what was taken off the change. */
  readonly beside: readonly Sentence[];
  /** True if the best before is of as many trials, so that the gain over it can be judged. */
  readonly isFairBest: boolean;
}

/**
 * Returns all marks of a day, or of one athlete on it, in order of appearance, each with its news, judged by
 * `variations` (by default those of all other days).
 */
export function tellMarks(
  db: ReadableDb,
  day: Day,
  athleteId: number | null = null,
  variations: Variations = variationsOf(db, day.id),
): MarkWithNews[] {
  const marks = athleteId === null ? marksOfDay(db, day.id) : marksOfAthlete(db, day.id, athleteId);
  const history = Map.groupBy(earlierMarks(db, day, athleteId), historyKey);
  return marks.map((kept) => ({
    ...kept,
    ...tell(kept, day, history.get(historyKey(kept)) ?? [], variations[kept.test]),
  }));
}

type ToldBeside = Pick<MarkWithNews, "news" | "beside" | "isFairBest">;

function tell(
  { test, mark, made }: KeptMark,
  { date }: Day,
  earlier: readonly EarlierMark[],
  variation: Variation,
): ToldBeside {
  if (mark.state !== "complete") return { news: null, beside: [], isFairBest: true };
  const now = { ...made, trials: fewTrials(mark) };
  const dated = { date, value: mark.value, made: now };
  const news = fairNewsOf(test, dated, earlier, variation);
  const best = earlier.find(({ value }) => value === news.bestBefore);
  return {
    news,
    beside: besideChange(test, dated, earlier, variation),
    isFairBest: best === undefined || areAlike(now, best.made),
  };
}

/** Returns the key of marks that compare: one athlete and one fingerprint. */
function historyKey(mark: { readonly athleteId: number; readonly fingerprint: string }): string {
  return `${mark.athleteId} ${mark.fingerprint}`;
}
