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
import { historyKey } from "./history-key.ts";
import { stopsOf, type TellStops } from "./stops.ts";

/** A mark of the day with its place in the athlete's own history; no news while it is incomplete. */
export interface MarkWithNews extends KeptMark {
  readonly news: MarkNews | null;
  /**
   * In what it was made otherwise than the mark that it is compared with, and what was taken off the change; of whoever
   * stopped before the end, now or last time, how far they came.
   */
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
  const stops = stopsOf(db, day, marks, athleteId);
  return marks.map((kept) => ({
    ...kept,
    ...tell(kept, day, history.get(historyKey(kept)) ?? [], variations[kept.test], stops),
  }));
}

type ToldBeside = Pick<MarkWithNews, "news" | "beside" | "isFairBest">;

function tell(
  kept: KeptMark,
  { date }: Day,
  earlier: readonly EarlierMark[],
  variation: Variation,
  stops: TellStops,
): ToldBeside {
  const { test, mark, made } = kept;
  const stopped = stops(kept, earlier.at(-1));
  if (mark.state !== "complete")
    return { news: null, beside: stopped === null ? [] : [stopped], isFairBest: true };
  const now = { ...made, trials: fewTrials(mark) };
  const dated = { date, value: mark.value, made: now };
  const news = fairNewsOf(test, dated, earlier, variation);
  const best = earlier.find(({ value }) => value === news.bestBefore);
  const beside = besideChange(test, dated, earlier, variation);
  return {
    news,
    beside: stopped === null ? beside : [stopped, ...beside],
    isFairBest: best === undefined || areAlike(now, best.made),
  };
}
