import { besideChange, fairNewsOf } from "../../domain/marks/fair-news.ts";
import { areAlike, fewTrials } from "../../domain/marks/otherwise.ts";
import type { MarkNews } from "../../domain/statistics/news.ts";
import type { Variation } from "../../domain/statistics/variation.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { keptApartFromDay } from "../../store/connection/stamp.ts";
import { earlierOf } from "../../store/reads/earlier-marks.ts";
import type { Day } from "../../store/tables/days.ts";
import { type KeptMark, marksOfAthlete, marksOfDay } from "../../store/tables/marks.ts";
import { variationsOf } from "../noise/errors.ts";
import { tellStop } from "./stops.ts";

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
 * Returns all marks of a day, or of one athlete on it, in order of appearance, each with its news, judged by how marks vary
 * on all other days. What is told of a mark follows from itself and from other days' marks alone, so it is told again only
 * where one of these has changed.
 */
export function tellMarks(db: ReadableDb, day: Day, athleteId: number | null = null): MarkWithNews[] {
  const marks = athleteId === null ? marksOfDay(db, day.id) : marksOfAthlete(db, day.id, athleteId);
  const variations = variationsOf(db, day.id);
  const known = toldOn(db, day.id);
  return marks.map((kept) => {
    const place = `${kept.athleteId} ${kept.test} ${kept.variant}`;
    const of = JSON.stringify([day.date, kept]);
    const before = known.get(place);
    if (before?.of === of) return before.told;
    const told = tellMark(db, day, kept, variations[kept.test]);
    known.set(place, { of, told });
    return told;
  });
}

/** What was told of a day's marks; `of`: the mark as it was. */
const toldOn = keptApartFromDay(
  (_db, _dayId) => new Map<string, { readonly of: string; readonly told: MarkWithNews }>(),
);

/** Tells one mark of a day. `variation` is how its test's marks vary on all other days. */
export function tellMark(db: ReadableDb, day: Day, kept: KeptMark, variation: Variation): MarkWithNews {
  const earlier = earlierOf(db, day, kept);
  const { test, mark, made } = kept;
  const stopped = tellStop(db, day, kept, earlier.at(-1));
  if (mark.state !== "complete")
    return { ...kept, news: null, beside: stopped === null ? [] : [stopped], isFairBest: true };
  const now = { ...made, trials: fewTrials(mark) };
  const dated = { date: day.date, value: mark.value, made: now };
  const news = fairNewsOf(test, dated, earlier, variation);
  const best = earlier.find(({ value }) => value === news.bestBefore);
  const beside = besideChange(test, { mark: dated, news }, earlier, variation);
  return {
    ...kept,
    news,
    beside: stopped === null ? beside : [stopped, ...beside],
    isFairBest: best === undefined || areAlike(now, best.made),
  };
}
