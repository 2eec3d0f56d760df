import { startingTypicalErrors, type TypicalError } from "../../../electron/domain/statistics/change.ts";
import { newsOf } from "../../../electron/domain/statistics/news.ts";
import { startingVariations } from "../../../electron/domain/statistics/variation.ts";
import type { SummaryDay, SummaryMark } from "../../../electron/domain/summary/day.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";

/** One athlete's result of today, and the last one; in grains. */
export interface Result {
  readonly league: string;
  readonly test?: TestCode;
  readonly variant?: string;
  /** Null: a first result. */
  readonly before: number | null;
  /** The day of the last result, and how many there were. */
  readonly since?: string;
  readonly visits?: number;
  /** Null: stopped before the end. */
  readonly now: number | null;
}

/** A day of athletes with one result each, judged by an error of its test. */
export function changedDay(results: readonly Result[], error?: TypicalError): SummaryDay {
  return {
    state: "closed",
    people: results.map(({ league }, athleteId) => ({
      ...{ athleteId, league, name: `Athlete ${athleteId}`, number: String(athleteId), bib: null },
      state: "testing",
    })),
    marks: results.map((result, athleteId) => markOf(result, athleteId, error)),
    ...{ attempts: [], leftOut: [], laneTimes: [] },
  };
}

function markOf(result: Result, athleteId: number, error?: TypicalError): SummaryMark {
  const { test = "push-up", variant = "full", before, now, since = "2026-04-11", visits = 1 } = result;
  const which = { athleteId, test, variant };
  if (now === null) return { ...which, mark: { state: "unfinished", rounds: 1, reps: 20 }, news: null };
  const earlier =
    before === null ? [] : Array.from({ length: visits }, () => ({ date: since, value: before }));
  const variation = { ...startingVariations[test], error: error ?? startingTypicalErrors[test] };
  const news = newsOf(test, { date: "2026-11-14", value: now }, earlier, variation);
  return { ...which, mark: { state: "complete", value: now }, news };
}
