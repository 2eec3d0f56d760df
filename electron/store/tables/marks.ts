import { type Made, madeOn } from "../../domain/marks/made.ts";
import type { MadeMark } from "../../domain/marks/otherwise.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { protocolOf, rulesVersion, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { cachedUntilWrite } from "../connection/until-write.ts";
import { scoredAttempts } from "./attempts.ts";
import { protocolText } from "./days.ts";

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

/** One athlete's marks of one day: left to itself SQLite goes through all that the athlete ever did. */
const ofAthlete = `mark INDEXED BY mark_by_day
  WHERE day_id = @dayId AND test IN (${testCodes.map((test) => `'${test}'`).join(", ")}) AND athlete_id = @athleteId`;
const ofAthleteSql = `SELECT ${columns} FROM ${ofAthlete}`;

/** Returns one athlete's marks of a day in the order in which they appeared. */
export function marksOfAthlete(db: ReadableDb, dayId: number, athleteId: number): KeptMark[] {
  const rows = allRows<MarkRow>(db, ofAthleteSql, { dayId, athleteId });
  return rows.sort((a, b) => a.seq - b.seq).map(asMark);
}

const ofTestSql = `SELECT ${columns} FROM mark INDEXED BY mark_by_day
  WHERE day_id = @dayId AND test = @test AND athlete_id = @athleteId`;

/** Returns one athlete's marks of a test on a day, one of each variant. */
export function marksOfTest(db: ReadableDb, dayId: number, athleteId: number, test: TestCode): KeptMark[] {
  return allRows<MarkRow>(db, ofTestSql, { dayId, athleteId, test }).map(asMark);
}

/** How a mark of a day was made, as columns; a sheet of past results says nothing of it. */
export const howMadeColumns =
  "mark.detail ->> '$.trials.done' AS trials, mark.position, mark.rest_minutes AS restMinutes";

/** Takes the columns of {@link howMadeColumns} from a row together. */
export function withMade<Row extends MadeMark>({ trials, position, restMinutes, ...rest }: Row) {
  return { ...rest, made: { trials, position, restMinutes } };
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

/** A mark as it is derived again, beside the tests that its athlete has marks of that day and how far these are. */
export interface Derived {
  /** Null without standing attempts. */
  readonly mark: KeptMark | null;
  readonly ofDay: readonly { readonly test: TestCode; readonly state: Mark["state"] }[];
}

/** Derives and stores a mark from its standing attempts; without any there is none. Part of the caller's transaction. */
export function deriveMark(
  db: WritableDb,
  dayId: number,
  athleteId: number,
  test: TestCode,
  variant: string,
): Derived {
  const place = { dayId, athleteId, test, variant };
  const attempts = scoredAttempts(db, dayId, athleteId);
  const standing = attempts.filter((each) => each.stands && each.test === test && each.variant === variant);
  const scored = scoreOf(db, place, standing);
  const made = madeOn(attempts);
  const mark = scored === null ? null : { ...scored, made: made.get(test) ?? notKnown };
  if (mark === null) execute(db, deleteSql, place);
  else keepMark(db, mark);
  return { mark, ofDay: noteMade(db, dayId, athleteId, made) };
}

const notKnown: Made = { position: null, restMinutes: null };
const howMadeSql = `SELECT test, state, position, rest_minutes AS restMinutes FROM ${ofAthlete}`;
const noteSql = `UPDATE mark SET position = @position, rest_minutes = @restMinutes
  WHERE athlete_id = @athleteId AND day_id = @dayId AND test = @test
    AND (position IS NOT @position OR rest_minutes IS NOT @restMinutes)`;

/** Notes how all marks of an athlete's day were made: one more test changes nothing of those before, a void may. */
function noteMade(
  db: WritableDb,
  dayId: number,
  athleteId: number,
  made: ReadonlyMap<TestCode, Made>,
): Derived["ofDay"] {
  const noted = allRows<Made & Derived["ofDay"][number]>(db, howMadeSql, { dayId, athleteId });
  for (const { test, ...before } of noted) {
    const { position, restMinutes } = made.get(test) ?? notKnown;
    if (before.position === position && before.restMinutes === restMinutes) continue;
    execute(db, noteSql, { dayId, athleteId, test, position, restMinutes });
  }
  return noted;
}

const deleteSql = `DELETE FROM mark
  WHERE athlete_id = @athleteId AND test = @test AND variant = @variant AND day_id = @dayId`;
const keepSql = `INSERT INTO mark
    (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules, position, rest_minutes)
  VALUES (@athleteId, @test, @variant, @dayId, @fingerprint, @state, @value, @detail, @seq, @rules, @position,
    @restMinutes)
  ON CONFLICT DO UPDATE SET fingerprint = excluded.fingerprint, state = excluded.state, value = excluded.value,
    detail = excluded.detail, seq = excluded.seq, rules = excluded.rules, position = excluded.position,
    rest_minutes = excluded.rest_minutes`;

/** Notes the same anew, after several attempts were added. Part of the caller's transaction. */
export function noteMadeAnew(db: WritableDb, dayId: number, athleteId: number): void {
  noteMade(db, dayId, athleteId, madeOn(scoredAttempts(db, dayId, athleteId)));
}

function keepMark(db: WritableDb, { mark, made, ...kept }: KeptMark): void {
  const value = mark.state === "complete" ? mark.value : null;
  const scored = { state: mark.state, value, detail: JSON.stringify(mark), rules: rulesVersion };
  execute(db, keepSql, { ...kept, ...made, ...scored });
}

/** Parsed parameters by their test and text, which say all of it; never more than some halls' settings. */
const parsed = new Map<string, unknown>();
const mostParsed = 200;

/** Returns the parameters of a test on a day, which nobody may change: all who ask get the same. */
export function parametersOf(db: ReadableDb, dayId: number, test: TestCode): unknown {
  const text = protocolText(db, dayId, test);
  const key = `${test} ${text}`;
  const known = parsed.get(key);
  if (known !== undefined) return known;
  const parameters = protocolOf(test).parameters.parse(text === undefined ? undefined : JSON.parse(text));
  if (parsed.size >= mostParsed) parsed.clear();
  parsed.set(key, parameters);
  return parameters;
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
