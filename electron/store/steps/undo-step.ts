import { Refusal } from "../../domain/refusal.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import { firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { heldRows } from "../erasure/held.ts";
import { athleteById, dropEmptyLeague } from "../tables/athletes.ts";
import { attemptById } from "../tables/attempts.ts";
import { dayAtHand } from "../tables/days.ts";
import { deriveMark } from "../tables/marks.ts";
import { voidAttempt } from "../tables/record.ts";
import { restoreRows } from "./restore.ts";
import { digestsOf, keyIn, type Place, type Row, rowsAbout, type StepRow } from "./rows.ts";
import { type KeptStep, noteUndone, rowsOfStep } from "./steps.ts";
import { permitted } from "./take-step.ts";

/** Who undoes a step, when, and what the history of cancelled attempts says as the reason. */
export interface Undoing {
  readonly by: string;
  readonly at: string;
  readonly reason: string;
}

/** Returns why a step can't be undone: what depends on it by now. Null where it can be. */
export function whyNotUndone(db: ReadableDb, step: KeptStep): Sentence | null {
  if (step.undone !== null) return sentence("steps.undone");
  const rows = rowsOfStep(db, step.seq);
  if (rows.length < step.rowCount) return sentence("steps.erased");
  return (
    laterStep(db, step) ??
    (step.kind === "past" ? null : sharedSince(db, step)) ??
    (step.kind === "results" ? attemptsChanged(db, rows) : rowsChanged(db, rows))
  );
}

/** Undoes a step whole. Part of the caller's transaction. @throws Refusal `conflict` where something depends on it */
export function undoStep(db: WritableDb, step: KeptStep, undoing: Undoing): void {
  const why = whyNotUndone(db, step);
  if (why !== null) throw new Refusal("conflict", why);
  const rows = rowsOfStep(db, step.seq);
  permitted(db, step.id, () => {
    if (step.kind === "results") voidAll(db, rows, undoing);
    else restore(db, rows);
    deriveAgain(db, rows);
    noteUndone(db, step.seq, undoing);
  });
  // Leagues that nobody is of any more once it is undone.
  for (const { place, key, before } of rows) {
    if (place === "league" && before === null) dropEmptyLeague(db, Number(key.id));
  }
}

/** Makes the marks that came back by the rules of now: their step may have been taken under earlier ones. */
function deriveAgain(db: WritableDb, rows: readonly StepRow[]): void {
  for (const { place, key } of rows) {
    if (place !== "mark") continue;
    const [dayId, athleteId] = [Number(key.day_id), Number(key.athlete_id)];
    deriveMark(db, dayId, athleteId, String(key.test) as TestCode, String(key.variant));
  }
}

function restore(db: WritableDb, rows: readonly StepRow[]): void {
  try {
    restoreRows(db, rows);
  } catch (error) {
    const code = String((error as { code?: unknown } | null)?.code ?? "");
    if (code.startsWith("SQLITE_CONSTRAINT")) throw new Refusal("conflict", sentence("steps.taken"));
    throw error;
  }
}

function voidAll(db: WritableDb, rows: readonly StepRow[], undoing: Undoing): void {
  for (const { after } of rows) if (after !== null) voidAttempt(db, String(after.id), undoing);
}

/** Steps about one person are undone in turn, the newest first. */
function laterStep(db: ReadableDb, { seq }: KeptStep): Sentence | null {
  const sql = `SELECT 1 FROM step JOIN step_row ON step_seq = step.seq WHERE step.seq > @seq AND undone_at IS NULL
    AND (athlete_id IN (SELECT athlete_id FROM step_row WHERE step_seq = @seq)
      OR (place = 'league' AND json_extract(row_key, '$.id') IN
        (SELECT json_extract(row_key, '$.id') FROM step_row WHERE step_seq = @seq AND place = 'league'))) LIMIT 1`;
  return firstRow(db, sql, { seq }) === undefined ? null : sentence("steps.later");
}

/** A file of anonymous data that was made since, of a day on which somebody of the step was. */
function sharedSince(db: ReadableDb, { seq, newestExport }: KeptStep): Sentence | null {
  const sql = `SELECT 1 FROM export_log WHERE id > @newestExport AND id NOT IN (SELECT export_id FROM export_unsaved)
    AND day_id IN (SELECT day_id FROM entrant WHERE athlete_id IN
      (SELECT athlete_id FROM step_row WHERE step_seq = @seq)) LIMIT 1`;
  return firstRow(db, sql, { seq, newestExport }) === undefined ? null : sentence("steps.shared");
}

function attemptsChanged(db: ReadableDb, rows: readonly StepRow[]): Sentence | null {
  for (const { after } of rows) {
    const attempt = attemptById(db, String(after?.id ?? ""));
    if (attempt === undefined) return sentence("steps.erased");
    const name = athleteById(db, attempt.athleteId)?.name ?? "";
    if (attempt.void !== null) return sentence("steps.corrected", { name });
    const day = dayAtHand(db);
    if (day?.id !== attempt.dayId || day.state !== "open") return sentence("steps.dayClosed");
  }
  return null;
}

function rowsChanged(db: ReadableDb, rows: readonly StepRow[]): Sentence | null {
  for (const row of rows) {
    const why = row.place === "digest" ? digestChanged(db, row) : rowChanged(db, row, rows);
    if (why !== null) return why;
  }
  return null;
}

/** Whether anything about somebody is other than the step left it. */
function digestChanged(db: ReadableDb, { athleteId, after }: StepRow): Sentence | null {
  if (athleteId === null || after === null) return null;
  const now = digestsOf(rowsAbout(db, [athleteId]));
  const places = new Set([...Object.keys(now), ...Object.keys(after)]);
  const changed = [...places].find((place) => now[place] !== after[place]);
  return changed === undefined ? null : changedSince(db, changed as Place, athleteId);
}

function rowChanged(db: ReadableDb, row: StepRow, rows: readonly StepRow[]): Sentence | null {
  const { place, after, before, athleteId } = row;
  if (place === "digest" || place === "mark" || place === "call") return null;
  // A league that came with it stays where others are of it by now.
  if (after === null || (place === "league" && before === null)) return null;
  const now = rowNow(db, place, { ...row.key, ...keysAfter(place, row) });
  const isSame = now !== undefined && Object.entries(after).every(([column, value]) => now[column] === value);
  if (!isSame) return changedSince(db, place, athleteId);
  return place === "athlete" && before === null ? builtOn(db, Number(after.id), rows) : null;
}

/** The key of a row after the step. */
function keysAfter(place: Place, { key, after }: StepRow): Row {
  const now = { ...key, ...after };
  return keyIn(place, now);
}

function rowNow(db: ReadableDb, place: Place, key: Row): Row | undefined {
  const where = Object.keys(keyIn(place, key)).map((column) => `${column} = @${column}`);
  return firstRow<Row>(db, `SELECT * FROM "${place}" WHERE ${where.join(" AND ")}`, keyIn(place, key));
}

/** Whether somebody who came with an import has more by now than came with it. */
function builtOn(db: ReadableDb, athleteId: number, rows: readonly StepRow[]): Sentence | null {
  const held = heldRows(db, athleteId);
  const own = (place: Place) => rows.filter((row) => row.place === place && row.athleteId === athleteId);
  const places = [
    "attempt",
    "past_mark",
    "past_void",
    "heat_lane",
    "absence",
    "left_out",
    "entrant",
  ] as const;
  const more = places.find((place) => held[place].length > own(place).length);
  return more === undefined ? null : changedSince(db, more, athleteId);
}

/** What has changed since, in the words of what people do. */
function changedSince(db: ReadableDb, place: Place, athleteId: number | null): Sentence {
  const name = (athleteId === null ? undefined : athleteById(db, athleteId)?.name) ?? "";
  if (place === "league") return sentence("steps.leagueChanged");
  if (name === "") return sentence("steps.erased");
  if (place === "athlete") return sentence("steps.personChanged", { name });
  const isPast = place === "past_mark" || place === "past_void";
  if (isPast) return sentence("steps.pastChanged", { name });
  const isResult = place === "attempt" || place === "mark";
  return isResult ? sentence("steps.tested", { name }) : sentence("steps.checkedIn", { name });
}
