import { fingerprint } from "../domain/tests/fingerprint.ts";
import type { Mark } from "../domain/tests/protocol.ts";
import { protocolOf, rulesVersion, type TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";
import { type Day, dayProtocols } from "./days.ts";

/** A mark as derived on a day. */
export interface KeptMark {
  readonly athleteId: number;
  readonly dayId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly mark: Mark;
  /** The newest attempt that made it: the order in which marks appeared. */
  readonly seq: number;
}

/** A comparable mark from an earlier day or an imported past result. */
export interface EarlierMark {
  readonly athleteId: number;
  readonly fingerprint: string;
  readonly date: string;
  readonly value: number;
}

interface MarkRow extends Omit<KeptMark, "mark"> {
  readonly detail: string;
}

const columns = "athlete_id AS athleteId, day_id AS dayId, test, variant, fingerprint, detail, seq";

function asMark(row: MarkRow): KeptMark {
  const { detail, ...rest } = row;
  return { ...rest, mark: JSON.parse(detail) as Mark };
}

/** All marks of a day in the order in which they appeared. */
export function marksOfDay(db: ReadableDb, dayId: number): KeptMark[] {
  const sql = `SELECT ${columns} FROM mark WHERE day_id = ? ORDER BY seq`;
  return statement<[number], MarkRow>(db, sql).all(dayId).map(asMark);
}

export function marksOfAthlete(db: ReadableDb, dayId: number, athleteId: number): KeptMark[] {
  const sql = `SELECT ${columns} FROM mark WHERE athlete_id = ? AND day_id = ? ORDER BY seq`;
  return statement<[number, number], MarkRow>(db, sql).all(athleteId, dayId).map(asMark);
}

/** Named: the library takes numbered parameters (`?1`) for names as well. */
type EarlierParameters = [{ date: string; day: number; athlete: number | null }];

/** Complete marks of earlier days and of imported past results. */
const earlierSql = `
  WITH who AS (SELECT athlete_id FROM entrant WHERE day_id = @day AND (@athlete IS NULL OR athlete_id = @athlete))
  SELECT mark.athlete_id AS athleteId, fingerprint, day.date AS date, value, day.id AS dayId
  FROM mark JOIN day ON day.id = mark.day_id
  WHERE mark.athlete_id IN who AND mark.state = 'complete'
    AND (day.date < @date OR (day.date = @date AND day.id < @day))
  UNION ALL
  SELECT athlete_id, fingerprint, date, value, 0 FROM past_mark WHERE athlete_id IN who AND date < @date
  ORDER BY date, dayId`;

/**
 * The complete marks before a day, oldest first, of one athlete or of everybody who takes part. Past results of the
 * same date do not count as earlier.
 */
export function earlierMarks(db: ReadableDb, day: Day, athleteId: number | null): EarlierMark[] {
  const query = statement<EarlierParameters, EarlierMark>(db, earlierSql);
  return query.all({ date: day.date, day: day.id, athlete: athleteId });
}

/** What one mark is of. */
export type MarkPlace = Pick<KeptMark, "dayId" | "athleteId" | "test" | "variant">;

interface StandingSeen {
  readonly seq: number;
  /** JSON as the test's own attempt schema says. */
  readonly seen: string;
}

/**
 * What stands for one mark, in the order of entry. Reads columns of the first version alone: a store is checked before
 * it is brought up to date.
 */
export function standingSeen(db: ReadableDb, place: MarkPlace): StandingSeen[] {
  const sql = `SELECT seq, seen FROM attempt WHERE athlete_id = @athleteId AND day_id = @dayId AND test = @test
      AND variant = @variant AND NOT EXISTS (SELECT 1 FROM void WHERE attempt_id = attempt.id)
    ORDER BY seq`;
  const { dayId, athleteId, test, variant } = place;
  const values = { dayId, athleteId, test, variant };
  return statement<[typeof values], StandingSeen>(db, sql).all(values);
}

/** The mark that follows from what stands; null where nothing does. */
export function scoreOf(
  db: ReadableDb,
  place: MarkPlace,
  standing: readonly StandingSeen[],
): KeptMark | null {
  const newest = standing.at(-1);
  if (newest === undefined) return null;
  const { dayId, athleteId, test, variant } = place;
  const protocol = protocolOf(test);
  const parameters = parametersOf(db, dayId, test);
  const mark = protocol.score(
    parameters,
    standing.map(({ seen }) => protocol.attempt.parse(JSON.parse(seen))),
  );
  const name = fingerprint(test, variant, parameters);
  return { athleteId, dayId, test, variant, fingerprint: name, mark, seq: newest.seq };
}

/** Scores the attempts that stand and keeps the mark; without attempts there is none. Part of the caller's transaction. */
export function deriveMark(
  db: WritableDb,
  dayId: number,
  athleteId: number,
  test: TestCode,
  variant: string,
): Mark | null {
  const place = { dayId, athleteId, test, variant };
  const scored = scoreOf(db, place, standingSeen(db, place));
  if (scored === null) {
    const sql = "DELETE FROM mark WHERE athlete_id = ? AND test = ? AND variant = ? AND day_id = ?";
    statement<[number, string, string, number]>(db, sql).run(athleteId, test, variant, dayId);
    return null;
  }
  keepMark(db, scored);
  return scored.mark;
}

function keepMark(db: WritableDb, kept: KeptMark): void {
  const sql = `INSERT INTO mark (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT DO UPDATE SET fingerprint = excluded.fingerprint, state = excluded.state, value = excluded.value,
      detail = excluded.detail, seq = excluded.seq, rules = excluded.rules`;
  statement<[number, string, string, number, string, string, number | null, string, number, number]>(
    db,
    sql,
  ).run(
    kept.athleteId,
    kept.test,
    kept.variant,
    kept.dayId,
    kept.fingerprint,
    kept.mark.state,
    kept.mark.state === "complete" ? kept.mark.value : null,
    JSON.stringify(kept.mark),
    kept.seq,
    rulesVersion,
  );
}

/** The frozen parameters of a test on a day. */
export function parametersOf(db: ReadableDb, dayId: number, test: TestCode): unknown {
  const found = dayProtocols(db, dayId).find((protocol) => protocol.test === test);
  return protocolOf(test).parameters.parse(found?.parameters);
}

/** Throws all marks away and derives them again from the attempts. Part of the caller's transaction. */
export function rebuildMarks(db: WritableDb): void {
  statement<[]>(db, "DELETE FROM mark").run();
  const sql = `SELECT DISTINCT day_id AS dayId, athlete_id AS athleteId, test, variant FROM attempt`;
  const all = statement<[], { dayId: number; athleteId: number; test: TestCode; variant: string }>(
    db,
    sql,
  ).all();
  for (const one of all) deriveMark(db, one.dayId, one.athleteId, one.test, one.variant);
}
