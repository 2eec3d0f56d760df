import { type Made, madeOn } from "../../domain/marks/made.ts";
import type { MadeMark } from "../../domain/marks/otherwise.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { protocolOf, rulesVersion, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { cachedUntilWrite } from "../connection/until-write.ts";
import { timesOfAthlete } from "./attempts.ts";
import { type Day, dayProtocols } from "./days.ts";

/** A mark as derived for a day. */
export interface KeptMark {
  readonly athleteId: number;
  readonly dayId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly mark: Mark;
  /** The newest attempt behind it: the order in which marks appeared. */
  readonly seq: number;
  readonly made: Made;
}

/** A comparable mark from an earlier day or an imported past result. */
export interface EarlierMark {
  readonly athleteId: number;
  readonly fingerprint: string;
  readonly date: string;
  readonly value: number;
  readonly made: MadeMark;
}

interface MarkRow extends Omit<KeptMark, "mark" | "made">, Made {
  readonly detail: string;
}

const columns = `athlete_id AS athleteId, day_id AS dayId, test, variant, fingerprint, detail, seq, position,
  rest_minutes AS restMinutes`;

function asMark(row: MarkRow): KeptMark {
  const { detail, position, restMinutes, ...rest } = row;
  return { ...rest, mark: JSON.parse(detail) as Mark, made: { position, restMinutes } };
}

/** Returns all marks of a day in the order in which they appeared; read once for all who ask between two changes. */
export const marksOfDay: (db: ReadableDb, dayId: number) => readonly KeptMark[] = cachedUntilWrite(readMarks);

function readMarks(db: ReadableDb, dayId: number): KeptMark[] {
  const sql = `SELECT ${columns} FROM mark WHERE day_id = @dayId ORDER BY seq`;
  return allRows<MarkRow>(db, sql, { dayId }).map(asMark);
}

export function marksOfAthlete(db: ReadableDb, dayId: number, athleteId: number): KeptMark[] {
  const sql = `SELECT ${columns} FROM mark WHERE athlete_id = @athleteId AND day_id = @dayId ORDER BY seq`;
  return allRows<MarkRow>(db, sql, { dayId, athleteId }).map(asMark);
}

/** How a mark of a day was made, as columns; a sheet of past results says nothing of it. */
export const howMadeColumns =
  "mark.detail ->> '$.trials.done' AS trials, mark.position, mark.rest_minutes AS restMinutes";

/** Takes the columns of {@link howMadeColumns} from a row together. */
export function withMade<Row extends MadeMark>({ trials, position, restMinutes, ...rest }: Row) {
  return { ...rest, made: { trials, position, restMinutes } };
}

/** Complete marks of earlier days and of imported past results. */
const earlierSql = `
  WITH who AS (SELECT athlete_id FROM entrant WHERE day_id = @dayId AND (@athleteId IS NULL OR athlete_id = @athleteId))
  SELECT mark.athlete_id AS athleteId, fingerprint, day.date AS date, value, day.id AS dayId, ${howMadeColumns}
  FROM mark JOIN day ON day.id = mark.day_id
  WHERE mark.athlete_id IN who AND mark.state = 'complete'
    AND (day.date < @date OR (day.date = @date AND day.id < @dayId))
  UNION ALL
  SELECT athlete_id, fingerprint, date, value, 0, NULL, NULL, NULL FROM past_mark WHERE athlete_id IN who AND date < @date
  ORDER BY date, dayId`;

/**
 * Returns the complete marks before a day, oldest first, of one athlete or of all entrants. Past results of the same
 * date do not count as earlier.
 */
export function earlierMarks(db: ReadableDb, day: Day, athleteId: number | null): EarlierMark[] {
  type Row = Omit<EarlierMark, "made"> & MadeMark;
  return allRows<Row>(db, earlierSql, { date: day.date, dayId: day.id, athleteId }).map(withMade);
}

/** The mark of an earlier day on which somebody stopped before the end. */
export interface StoppedMark extends Pick<EarlierMark, "athleteId" | "fingerprint" | "date"> {
  readonly mark: Mark;
}

const stoppedSql = `
  SELECT athlete_id AS athleteId, fingerprint, day.date AS date, detail FROM mark JOIN day ON day.id = mark.day_id
  WHERE mark.state = 'unfinished' AND (@athleteId IS NULL OR athlete_id = @athleteId)
    AND athlete_id IN (SELECT athlete_id FROM entrant WHERE day_id = @dayId)
    AND (day.date < @date OR (day.date = @date AND day.id < @dayId))
  ORDER BY date, day.id`;

/** Returns the unfinished marks before a day, oldest first, of one athlete or of all entrants. */
export function stoppedMarks(db: ReadableDb, day: Day, athleteId: number | null): StoppedMark[] {
  type Row = Omit<StoppedMark, "mark"> & { readonly detail: string };
  const rows = allRows<Row>(db, stoppedSql, { date: day.date, dayId: day.id, athleteId });
  return rows.map(({ detail, ...rest }) => ({ ...rest, mark: JSON.parse(detail) as Mark }));
}

/** The key of one mark: its day, athlete, test and variant. */
export type MarkPlace = Pick<KeptMark, "dayId" | "athleteId" | "test" | "variant">;
/** What follows from a mark's own attempts. */
type ScoredMark = Omit<KeptMark, "made">;

interface StandingSeen {
  readonly seq: number;
  /** JSON of the test's own attempt schema. */
  readonly seen: string;
}

/**
 * Returns the standing attempts of one mark, in the order of entry. Reads columns of the first version only, since a
 * store is checked before it is migrated.
 */
export function standingSeen(db: ReadableDb, place: MarkPlace): StandingSeen[] {
  const sql = `SELECT seq, seen FROM attempt WHERE athlete_id = @athleteId AND day_id = @dayId AND test = @test
      AND variant = @variant AND NOT EXISTS (SELECT 1 FROM void WHERE attempt_id = attempt.id)
    ORDER BY seq`;
  return allRows(db, sql, { ...place });
}

/** Computes the mark from standing attempts; null where there are none. */
export function scoreOf(
  db: ReadableDb,
  place: MarkPlace,
  standing: readonly StandingSeen[],
): ScoredMark | null {
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

/**
 * Derives and stores a mark from its standing attempts; without any there is none. Part of the caller's transaction.
 */
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
    const sql = `DELETE FROM mark
      WHERE athlete_id = @athleteId AND test = @test AND variant = @variant AND day_id = @dayId`;
    execute(db, sql, place);
    noteMade(db, dayId, athleteId);
    return null;
  }
  keepMark(db, scored);
  noteMade(db, dayId, athleteId);
  return scored.mark;
}

/** Notes how all marks of an athlete's day were made: one more test changes nothing of those before, a void may. */
function noteMade(db: WritableDb, dayId: number, athleteId: number): void {
  const made = madeOn(timesOfAthlete(db, dayId, athleteId));
  const sql = `UPDATE mark SET position = @position, rest_minutes = @restMinutes
    WHERE athlete_id = @athleteId AND day_id = @dayId AND test = @test
    AND (position IS NOT @position OR rest_minutes IS NOT @restMinutes)`;
  for (const test of testCodes) {
    const { position, restMinutes } = made.get(test) ?? { position: null, restMinutes: null };
    execute(db, sql, { dayId, athleteId, test, position, restMinutes });
  }
}

function keepMark(db: WritableDb, { mark, ...kept }: ScoredMark): void {
  const sql = `INSERT INTO mark (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules)
    VALUES (@athleteId, @test, @variant, @dayId, @fingerprint, @state, @value, @detail, @seq, @rules)
    ON CONFLICT DO UPDATE SET fingerprint = excluded.fingerprint, state = excluded.state, value = excluded.value,
      detail = excluded.detail, seq = excluded.seq, rules = excluded.rules`;
  const value = mark.state === "complete" ? mark.value : null;
  execute(db, sql, { ...kept, state: mark.state, value, detail: JSON.stringify(mark), rules: rulesVersion });
}

/** Returns the frozen parameters of a test on a day. */
export function parametersOf(db: ReadableDb, dayId: number, test: TestCode): unknown {
  const found = dayProtocols(db, dayId).find((protocol) => protocol.test === test);
  return protocolOf(test).parameters.parse(found?.parameters);
}

/** True if some marks were made by other rules than these. */
export function areByOtherRules(db: ReadableDb): boolean {
  const sql = "SELECT 1 FROM mark WHERE rules <> @rules LIMIT 1";
  return firstRow(db, sql, { rules: rulesVersion }) !== undefined;
}

/** Deletes all marks and derives them again from the attempts. Part of the caller's transaction. */
export function rebuildMarks(db: WritableDb): void {
  execute(db, "DELETE FROM mark");
  const sql = "SELECT DISTINCT day_id AS dayId, athlete_id AS athleteId, test, variant FROM attempt";
  for (const { dayId, athleteId, test, variant } of allRows<MarkPlace>(db, sql)) {
    deriveMark(db, dayId, athleteId, test, variant);
  }
}
