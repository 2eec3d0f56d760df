import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** Two complete marks of one athlete and one fingerprint on neighbouring dates, in the test's grains. */
export interface RepeatedMark {
  readonly test: TestCode;
  readonly before: number;
  readonly after: number;
}

/** An athlete's last two trials on one day (the first is often a careful one), in grains, and the count of trials. */
export interface RepeatedTrial {
  readonly before: number;
  readonly after: number;
  readonly trials: number;
}

/** Days between two marks that still count as repeats of each other: too few for training to show. */
const repeatDays = 14;

/**
 * Counts only marks of all their trials, since the best of fewer is lower by chance, and of dates with another date near, so that a store whose days lie months apart is read no further
 * than its dates. Of one athlete's marks of one date the day's own counts, or the latest day's if there are two.
 */
const marksSql = `
  WITH dates AS MATERIALIZED (
    SELECT date, julianday(date) AS place FROM day WHERE id <> @exceptDayId
    UNION SELECT date, julianday(date) FROM past_mark),
  near AS MATERIALIZED (
    SELECT DISTINCT one.date FROM dates AS one JOIN dates AS other
    ON one.place <> other.place AND abs(one.place - other.place) <= ${repeatDays}),
  complete AS (
    SELECT mark.athlete_id, mark.fingerprint, mark.test, day.date, mark.value, day.id AS rank
    FROM near CROSS JOIN day ON day.date = near.date CROSS JOIN mark ON mark.day_id = day.id
    WHERE mark.state = 'complete' AND mark.detail ->> '$.trials' IS NULL AND day.id <> @exceptDayId
    UNION ALL
    SELECT athlete_id, fingerprint, test, date, value, 0 FROM past_mark WHERE date IN near),
  one_a_date AS (SELECT *, max(rank) FROM complete GROUP BY athlete_id, fingerprint, date),
  neighbours AS (
    SELECT test, value AS after, julianday(date) AS place, lag(value) OVER own AS before,
      lag(julianday(date)) OVER own AS placeBefore
    FROM one_a_date WINDOW own AS (PARTITION BY athlete_id, fingerprint ORDER BY date))
  SELECT test, before, after FROM neighbours WHERE place - placeBefore <= ${repeatDays}`;

/** Returns every mark with another at most 14 days before it, and the nearest such; leaves out one day (0: none). */
export function repeatedMarks(db: ReadableDb, exceptDayId: number): RepeatedMark[] {
  return allRows(db, marksSql, { exceptDayId });
}

/** Standing trials of each day in the order of entry; window functions would take four times as long. */
const trialsSql = `
  SELECT day_id || ' ' || athlete_id AS who, seen
  FROM day CROSS JOIN attempt ON attempt.day_id = day.id AND test = @test
  WHERE day.id <> @exceptDayId AND NOT EXISTS (SELECT 1 FROM void WHERE attempt_id = attempt.id)
  ORDER BY day_id, seq`;

/**
 * Returns the last two standing trials of each athlete and day that has at least two, leaving out one day (0: none).
 * Empty for a test in which one attempt is the mark.
 */
export function repeatedTrials(db: ReadableDb, test: TestCode, exceptDayId: number): RepeatedTrial[] {
  const { trial } = definitionOf(test).figures;
  if (trial === null) return [];
  const trials = allRows<{ who: string; seen: string }>(db, trialsSql, { test, exceptDayId });
  const latest = new Map<string, RepeatedTrial>();
  for (const { who, seen } of trials) {
    const amount = trial(JSON.parse(seen));
    const last = latest.get(who);
    latest.set(who, { before: last?.after ?? amount, after: amount, trials: (last?.trials ?? 0) + 1 });
  }
  return [...latest.values()].filter(({ trials }) => trials > 1);
}
