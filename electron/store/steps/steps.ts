import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { countAdded, keepAdded, type Newest } from "./added.ts";
import type { StepKind } from "./kinds.ts";
import type { Row, StepRow } from "./rows.ts";

/** A step of the history of who is who, or an import. */
export interface Step {
  /** Made by the client, so that a retry is known. */
  readonly id: string;
  readonly kind: StepKind;
  /** ISO 8601 instant. */
  readonly at: string;
  /** Initials; empty where nobody was asked. */
  readonly by: string;
  /** The name of an imported file; else empty. */
  readonly file: string;
  readonly counts: Readonly<Record<string, number>>;
}

export interface KeptStep extends Step {
  readonly seq: number;
  readonly rowCount: number;
  /** The newest bundle when it was taken; 0 for none. */
  readonly newestExport: number;
  readonly undone: { readonly at: string; readonly by: string } | null;
}

interface StepLine extends Omit<KeptStep, "counts" | "undone"> {
  readonly counts: string;
  readonly undoneAt: string | null;
  readonly undoneBy: string | null;
}

const columns = `seq, id, kind, at, done_by AS by, file, counts, row_count AS rowCount, newest_export AS newestExport,
  undone_at AS undoneAt, undone_by AS undoneBy`;

function asStep({ counts, undoneAt, undoneBy, ...line }: StepLine): KeptStep {
  const undone = undoneAt === null ? null : { at: undoneAt, by: undoneBy ?? "" };
  return { ...line, counts: JSON.parse(counts) as Record<string, number>, undone };
}

/** Returns all steps, newest first. */
export function allSteps(db: ReadableDb): KeptStep[] {
  return allRows<StepLine>(db, `SELECT ${columns} FROM step ORDER BY seq DESC`).map(asStep);
}

export function stepById(db: ReadableDb, id: string): KeptStep | undefined {
  const line = firstRow<StepLine>(db, `SELECT ${columns} FROM step WHERE id = @id`, { id });
  return line === undefined ? undefined : asStep(line);
}

/** Adds a step with its rows; `owner`: whom all of them are about, where two became one. */
export function addStep(
  db: WritableDb,
  { counts, ...step }: Step,
  rows: readonly StepRow[],
  owner: number | null,
): void {
  const seq = addLine(db, step, counts, rows.length);
  for (const [position, row] of rows.entries()) addStepRow(db, seq, position, row, owner);
}

/** Adds the step of an import with what it changed, and with what it added since `newest`; none where there is neither. */
export function addImportStep(
  db: WritableDb,
  { counts, ...step }: Step,
  changed: readonly StepRow[],
  newest: Newest,
): void {
  const rowCount = changed.length + countAdded(db, step.kind, newest);
  if (rowCount === 0) return;
  const seq = addLine(db, step, counts, rowCount);
  for (const [position, row] of changed.entries()) addStepRow(db, seq, position, row, null);
  keepAdded(db, seq, step.kind, { newest, position: changed.length });
}

/** Adds a step without its rows; returns its place in the order of steps. */
function addLine(
  db: WritableDb,
  step: Omit<Step, "counts">,
  counts: Step["counts"],
  rowCount: number,
): number {
  const sql = `INSERT INTO step (id, kind, at, done_by, file, counts, row_count, newest_export)
    VALUES (@id, @kind, @at, @by, @file, @counts, @rowCount, ifnull((SELECT max(id) FROM export_log), 0))`;
  const line = { ...step, counts: JSON.stringify(counts), rowCount };
  return Number(execute(db, sql, line).lastInsertRowid);
}

function addStepRow(
  db: WritableDb,
  seq: number,
  position: number,
  { place, athleteId, key, before, after }: StepRow,
  owner: number | null,
): void {
  const sql = `INSERT INTO step_row (step_seq, position, place, athlete_id, row_key, before, after)
    VALUES (@seq, @position, @place, @athleteId, @key, @before, @after)`;
  const text = (row: Row | null) => (row === null ? null : JSON.stringify(row));
  const about = athleteId === null ? null : (owner ?? athleteId);
  execute(db, sql, {
    ...{ seq, position, place, athleteId: about, key: JSON.stringify(key) },
    ...{ before: text(before), after: text(after) },
  });
}

interface StepRowLine {
  readonly place: StepRow["place"];
  readonly athleteId: number | null;
  readonly key: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** Returns what a step changed, in the order of writing. */
export function rowsOfStep(db: ReadableDb, seq: number): StepRow[] {
  const sql = `SELECT place, athlete_id AS athleteId, row_key AS key, before, after FROM step_row
    WHERE step_seq = @seq ORDER BY position`;
  const read = (text: string | null) => (text === null ? null : (JSON.parse(text) as Row));
  return allRows<StepRowLine>(db, sql, { seq }).map(({ place, athleteId, key, before, after }) => ({
    ...{ place, athleteId, key: JSON.parse(key) as Row },
    ...{ before: read(before), after: read(after) },
  }));
}

/** Notes that a step was undone. What it changed is no longer held, but for which attempts an import had. */
export function noteUndone(db: WritableDb, seq: number, { at, by }: { at: string; by: string }): void {
  execute(db, "UPDATE step SET undone_at = @at, undone_by = @by WHERE seq = @seq", { seq, at, by });
  execute(db, "DELETE FROM step_row WHERE step_seq = @seq AND place <> 'attempt'", { seq });
}

/** Returns which imports of results were undone. */
export function undoneImports(db: ReadableDb): number[] {
  const sql = "SELECT seq FROM step WHERE kind = 'results' AND undone_at IS NOT NULL ORDER BY seq";
  return allRows<{ seq: number }>(db, sql).map(({ seq }) => seq);
}

/** Returns the ids of attempts whose import was undone: the same sheet may bring them again. */
export function undoneAttempts(db: ReadableDb): Set<string> {
  const sql = `SELECT json_extract(after, '$.id') AS id FROM step_row JOIN step ON step.seq = step_seq
    WHERE place = 'attempt' AND kind = 'results' AND undone_at IS NOT NULL`;
  return new Set(allRows<{ id: string }>(db, sql).map(({ id }) => id));
}
