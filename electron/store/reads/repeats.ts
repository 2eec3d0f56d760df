import type { DatedValue, RepeatedTrial } from "../../domain/statistics/repeats.ts";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** An athlete's complete marks of one fingerprint over the years, oldest first. */
export interface OwnMarks {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly marks: readonly DatedValue[];
}

interface Row extends DatedValue {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly fingerprint: string;
}

/**
 * Counts only marks of all their trials, since the best of fewer is lower by chance. Of one athlete's marks of one date the
 * day's own counts, or the latest day's if there are two (SQLite's max()).
 */
const marksSql = `
  WITH complete AS (
    SELECT mark.athlete_id, mark.fingerprint, mark.test, day.date, mark.value, day.id AS rank
    FROM mark JOIN day ON day.id = mark.day_id WHERE mark.state = 'complete' AND mark.detail ->> '$.trials' IS NULL AND day.id <> @exceptDayId
    UNION ALL
    SELECT athlete_id, fingerprint, test, date, value, 0 FROM past_mark)
  SELECT athlete_id AS athleteId, fingerprint, test, CAST(julianday(date) + 0.5 AS INTEGER) AS day, value, max(rank)
  FROM complete GROUP BY athlete_id, fingerprint, date ORDER BY athlete_id, fingerprint, date`;

/**
 * Returns the complete marks of all athletes, a series for each athlete and fingerprint; leaves out one day (0: none).
 * Asked once a day, not once an entry (`keptApartFromDay`).
 */
export function allOwnMarks(db: ReadableDb, exceptDayId: number): OwnMarks[] {
  const rows = allRows<Row>(db, marksSql, { exceptDayId });
  const series: (OwnMarks & { readonly marks: DatedValue[] })[] = [];
  for (const { athleteId, test, fingerprint, day, value } of rows) {
    const last = series.at(-1);
    if (last?.athleteId === athleteId && last.fingerprint === fingerprint) last.marks.push({ day, value });
    else series.push({ athleteId, test, fingerprint, marks: [{ day, value }] });
  }
  return series;
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
