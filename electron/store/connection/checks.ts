import { isDeepStrictEqual } from "node:util";
import type { CheckStep } from "../../domain/backups/check-time.ts";
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

/** Hears how far a check is. */
export type Told = (at: CheckStep) => void;

const unheard: Told = () => {};

/** Returns the first damage found in a store as a line for the log; null when none was found. Writes nothing. */
export function findDamage(db: ReadableDb, told = unheard): string | null {
  const missing = missingTables(db);
  if (missing.length > 0) return `tables are missing: ${missing.join(", ")}`;
  told({ step: "shape", done: 0, total: 1 });
  const shape = firstRow<{ integrity_check: string }>(db, "PRAGMA integrity_check(1)");
  if (shape?.integrity_check !== "ok") return String(shape?.integrity_check);
  told({ step: "links", done: 0, total: 1 });
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
export function findWrongMark(db: ReadableDb, limit: number, told = unheard): string | null {
  const total = Math.min(
    limit,
    firstRow<{ count: number }>(db, "SELECT count(*) AS count FROM mark")?.count ?? 0,
  );
  let done = 0;
  // Day by day: all places at once would be sorted before the first is looked at.
  for (const { dayId } of allRows<{ dayId: number }>(db, "SELECT id AS dayId FROM day ORDER BY id DESC")) {
    told({ step: "marks", done, total });
    const places = allRows<MarkPlace>(db, placesOfDay, { dayId, limit: limit - done });
    const wrong = places.find((place) => !isRight(db, place));
    if (wrong !== undefined) return `the mark of athlete ${wrong.athleteId} in ${wrong.test} does not follow`;
    done += places.length;
    if (done >= limit) break;
  }
  return null;
}

const placesOfDay = `SELECT @dayId AS dayId, athlete_id AS athleteId, test, variant FROM (
    SELECT athlete_id, test, variant FROM attempt WHERE day_id = @dayId
    UNION SELECT athlete_id, test, variant FROM mark WHERE day_id = @dayId)
  ORDER BY athlete_id, test, variant LIMIT @limit`;

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
