import { isDeepStrictEqual } from "node:util";
import type { Holding } from "../../domain/backups/records.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { rulesVersion } from "../../domain/tests/registry.ts";
import { type MarkPlace, scoreOf, standingSeen } from "../tables/marks.ts";
import { allRows, firstRow, type ReadableDb } from "./database.ts";

/** Tables that every store has had since the first version. */
const oldest = [
  "league",
  "athlete",
  "day",
  "day_protocol",
  "entrant",
  "attempt",
  "void",
  "mark",
  "past_mark",
];

/** Returns the first damage found in a store as a line for the log; null when none was found. Writes nothing. */
export function findDamage(db: ReadableDb): string | null {
  const missing = missingTables(db);
  if (missing.length > 0) return `tables are missing: ${missing.join(", ")}`;
  const shape = firstRow<{ integrity_check: string }>(db, "PRAGMA integrity_check(1)");
  if (shape?.integrity_check !== "ok") return String(shape?.integrity_check);
  const stray = firstRow<{ table: string }>(db, "PRAGMA foreign_key_check");
  if (stray !== undefined) return `a row of ${stray.table} belongs to nothing`;
  return null;
}

function missingTables(db: ReadableDb): string[] {
  const sql = "SELECT name FROM sqlite_schema WHERE type = 'table'";
  const there = new Set(allRows<{ name: string }>(db, sql).map(({ name }) => name));
  return oldest.filter((name) => !there.has(name));
}

interface StoredMark {
  readonly fingerprint: string;
  readonly state: string;
  readonly value: number | null;
  readonly detail: string;
  readonly seq: number;
  readonly rules: number;
}

/**
 * Looks for a mark that doesn't follow from its standing attempts, among the newest `limit` marks. Returns null when
 * all do. Marks made by earlier rules are skipped: they are old, not wrong.
 */
export function findWrongMark(db: ReadableDb, limit: number): string | null {
  const sql = `SELECT day_id AS dayId, athlete_id AS athleteId, test, variant FROM (
      SELECT day_id, athlete_id, test, variant FROM attempt
      UNION SELECT day_id, athlete_id, test, variant FROM mark)
    ORDER BY day_id DESC, athlete_id, test, variant LIMIT @limit`;
  const wrong = allRows<MarkPlace>(db, sql, { limit }).find((place) => !isRight(db, place));
  return wrong === undefined
    ? null
    : `the mark of athlete ${wrong.athleteId} in ${wrong.test} does not follow`;
}

function isRight(db: ReadableDb, place: MarkPlace): boolean {
  const sql = `SELECT fingerprint, state, value, detail, seq, rules FROM mark
    WHERE athlete_id = @athleteId AND test = @test AND variant = @variant AND day_id = @dayId`;
  const stored = firstRow<StoredMark>(db, sql, { ...place });
  const standing = standingSeen(db, place);
  if (standing.length === 0 || stored === undefined) return standing.length === 0 && stored === undefined;
  if (stored.rules !== rulesVersion) return true;
  const scored = scoreOf(db, place, standing);
  if (scored === null) return false;
  const { mark } = scored;
  const value = mark.state === "complete" ? mark.value : null;
  return (
    stored.fingerprint === scored.fingerprint &&
    stored.seq === scored.seq &&
    stored.state === mark.state &&
    stored.value === value &&
    isDeepStrictEqual(JSON.parse(stored.detail) as Mark, mark)
  );
}

/** Counts the days, athletes and attempts in a store. */
export function holdingOf(db: ReadableDb): Holding {
  const sql = `SELECT (SELECT count(*) FROM day) AS days, (SELECT count(*) FROM athlete) AS athletes,
    (SELECT count(*) FROM attempt) AS attempts, (SELECT at FROM attempt ORDER BY seq DESC LIMIT 1) AS newestAttempt`;
  const none = { days: 0, athletes: 0, attempts: 0, newestAttempt: null };
  return firstRow<Holding>(db, sql) ?? none;
}
