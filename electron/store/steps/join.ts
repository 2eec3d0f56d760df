import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { type Athlete, dropEmptyLeague, updateAthlete } from "../tables/athletes.ts";
import { deriveMark, type MarkPlace } from "../tables/marks.ts";

/** Two records of one person: the one that stays, and the one that goes into it. */
export interface Pair {
  readonly kept: Athlete;
  readonly gone: Athlete;
}

/** A day on whose list both are. */
export interface SharedDay {
  readonly dayId: number;
  readonly date: string;
  /** Bibs; null for none. */
  readonly keptBib: number | null;
  readonly goneBib: number | null;
  /** Whether there is nothing but their place on the list. */
  readonly keptIsBare: boolean;
  readonly goneIsBare: boolean;
}

interface SharedLine extends Omit<SharedDay, "keptIsBare" | "goneIsBare"> {
  readonly keptRows: number;
  readonly goneRows: number;
}

const rowsOfDay = (
  who: string,
) => `(SELECT count(*) FROM attempt WHERE day_id = day.id AND athlete_id = ${who})
  + (SELECT count(*) FROM heat_lane WHERE day_id = day.id AND athlete_id = ${who})
  + (SELECT count(*) FROM absence WHERE day_id = day.id AND athlete_id = ${who})
  + (SELECT count(*) FROM left_out WHERE day_id = day.id AND athlete_id = ${who} AND kind = 'skip')`;

const ids = ({ kept, gone }: Pair) => ({ kept: kept.id, gone: gone.id });

export function sharedDays(db: ReadableDb, pair: Pair): SharedDay[] {
  const sql = `SELECT day.id AS dayId, day.date AS date, a.bib AS keptBib, b.bib AS goneBib,
      ${rowsOfDay("@kept")} AS keptRows, ${rowsOfDay("@gone")} AS goneRows
    FROM day JOIN entrant a ON a.day_id = day.id AND a.athlete_id = @kept
      JOIN entrant b ON b.day_id = day.id AND b.athlete_id = @gone ORDER BY day.date, day.id`;
  return allRows<SharedLine>(db, sql, ids(pair)).map(({ keptRows, goneRows, ...day }) => ({
    ...day,
    keptIsBare: keptRows === 0 && day.keptBib === null,
    goneIsBare: goneRows === 0 && day.goneBib === null,
  }));
}

/** Tests that both have standing attempts of on the same day. */
export function testsOfBoth(db: ReadableDb, pair: Pair): { test: TestCode; date: string }[] {
  const standing = "NOT EXISTS (SELECT 1 FROM void WHERE attempt_id = attempt.id)";
  const sql = `SELECT DISTINCT test, day.date AS date FROM attempt JOIN day ON day.id = day_id
    WHERE athlete_id = @gone AND ${standing} AND (day_id, test) IN
      (SELECT day_id, test FROM attempt WHERE athlete_id = @kept AND ${standing}) ORDER BY date, test`;
  return allRows(db, sql, ids(pair));
}

/** Whether both ran in one heat: then they are two people. */
export function ranTogether(db: ReadableDb, pair: Pair): boolean {
  const sql = `SELECT 1 FROM heat_lane WHERE athlete_id = @gone
    AND heat_id IN (SELECT heat_id FROM heat_lane WHERE athlete_id = @kept) LIMIT 1`;
  return allRows(db, sql, ids(pair)).length > 0;
}

/** Tests that both skip on one day, where the reason of the second would be lost. */
export function skipsOfBoth(db: ReadableDb, pair: Pair): { test: TestCode; date: string }[] {
  const sql = `SELECT test, day.date AS date FROM left_out JOIN day ON day.id = day_id
    WHERE athlete_id = @gone AND reason <> '' AND (day_id, test) IN
      (SELECT day_id, test FROM left_out WHERE athlete_id = @kept) ORDER BY date, test`;
  return allRows(db, sql, ids(pair));
}

/** Earlier results of both of one test by the same rules and date; `gone` and `kept` in grains. */
export function pastOfBoth(
  db: ReadableDb,
  pair: Pair,
): { test: TestCode; date: string; kept: number; gone: number }[] {
  const sql = `SELECT b.test, b.date, a.value AS kept, b.value AS gone FROM past_mark a
    JOIN past_mark b ON b.fingerprint = a.fingerprint AND b.date = a.date
    WHERE a.athlete_id = @kept AND b.athlete_id = @gone ORDER BY b.date, b.test`;
  return allRows(db, sql, ids(pair));
}

/**
 * Makes everything of one record the other's, whose facts become `after`. What was seen stays as it is: only whose it is
 * changes. Part of a step, which keeps what every row was.
 */
export function joinRecords(db: WritableDb, pair: Pair, after: Athlete): void {
  const both = sharedDays(db, pair);
  const places = attemptPlaces(db, pair.gone.id);
  for (const { dayId, keptIsBare, goneIsBare } of both) {
    const leaves = keptIsBare && !goneIsBare ? pair.kept.id : pair.gone.id;
    leaveDay(db, dayId, leaves, leaves === pair.kept.id || goneIsBare);
  }
  for (const sql of moves) execute(db, sql, ids(pair));
  for (const { dayId, test, variant } of places) deriveMark(db, dayId, pair.kept.id, test, variant);
  execute(db, "DELETE FROM athlete WHERE id = @id", { id: pair.gone.id });
  updateAthlete(db, pair.kept.id, after);
  dropEmptyLeague(db, pair.gone.leagueId);
}

function attemptPlaces(db: ReadableDb, athleteId: number): Omit<MarkPlace, "athleteId">[] {
  const sql = "SELECT DISTINCT day_id AS dayId, test, variant FROM attempt WHERE athlete_id = @athleteId";
  return allRows(db, sql, { athleteId });
}

/** Takes somebody from a day's list, as they are on it under the other record too. */
function leaveDay(db: WritableDb, dayId: number, athleteId: number, isBare: boolean): void {
  const which = "WHERE day_id = @dayId AND athlete_id = @athleteId";
  execute(db, `DELETE FROM call ${which}`, { dayId, athleteId });
  if (isBare) execute(db, `DELETE FROM left_out ${which}`, { dayId, athleteId });
  execute(db, `DELETE FROM entrant ${which}`, { dayId, athleteId });
}

/** What both have is dropped, the rest goes over; marks are derived again. */
const moves = [
  `DELETE FROM left_out WHERE athlete_id = @gone
    AND (day_id, test) IN (SELECT day_id, test FROM left_out WHERE athlete_id = @kept)`,
  `DELETE FROM past_mark WHERE athlete_id = @gone
    AND (fingerprint, date) IN (SELECT fingerprint, date FROM past_mark WHERE athlete_id = @kept)`,
  "DELETE FROM mark WHERE athlete_id = @gone",
  ...[
    "call",
    "left_out",
    "absence",
    "attempt",
    "heat_lane",
    "past_mark",
    "past_void",
    "study_reading",
    "entrant",
  ].map((table) => `UPDATE ${table} SET athlete_id = @kept WHERE athlete_id = @gone`),
];
