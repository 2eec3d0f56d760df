import { execute, type WritableDb } from "../connection/database.ts";
import { newestOf } from "./added.ts";
import { difference, digestsOf, rowsAbout, rowsOfImport, type Snapshot, type StepRow } from "./rows.ts";
import { addImportStep, addStep, type Step } from "./steps.ts";

/** Lets triggers pass what a step does to rows; the transaction can't end with it. */
export function permitted<Result>(db: WritableDb, stepId: string, work: () => Result): Result {
  execute(db, "INSERT INTO stepping (step_id) VALUES (@stepId)", { stepId });
  // Keys hold again when every row is where it belongs; they are checked at the commit.
  db.exec("PRAGMA defer_foreign_keys = ON");
  const result = work();
  execute(db, "DELETE FROM stepping WHERE step_id = @stepId", { stepId });
  return result;
}

/**
 * Does something to what is known of some athletes and their leagues, and keeps what it changed. `owner`: the one that
 * all of them are now, where two become one. Part of the caller's transaction.
 */
export function takeIdentityStep(
  db: WritableDb,
  step: Step,
  athleteIds: readonly number[],
  work: () => void,
  owner: number | null = null,
): void {
  permitted(db, step.id, () => {
    const before = rowsAbout(db, athleteIds);
    work();
    const after = rowsAbout(db, athleteIds);
    const rows = difference(before, after);
    addStep(db, step, owner === null ? rows : [...rows, leftAs(owner, after)], owner);
  });
}

function leftAs(athleteId: number, after: Snapshot): StepRow {
  return { place: "digest", athleteId, key: {}, before: null, after: digestsOf(after) };
}

/**
 * Imports a sheet, and keeps what that changed if it did. `athleteIds`: those who were there before and of whom it may
 * change something; what it adds under new numbers is found by those. Part of the caller's transaction.
 */
export function takeImportStep(
  db: WritableDb,
  step: Step,
  athleteIds: readonly number[],
  work: () => void,
): void {
  const newest = newestOf(db);
  const before = rowsOfImport(db, step.kind, athleteIds);
  work();
  const changed = difference(before, rowsOfImport(db, step.kind, athleteIds));
  addImportStep(db, step, changed, newest);
}
