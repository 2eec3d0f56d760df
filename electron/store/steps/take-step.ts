import { execute, type WritableDb } from "../connection/database.ts";
import {
  difference,
  digestsOf,
  type Place,
  rowsAbout,
  rowsOfTables,
  type Snapshot,
  type StepRow,
} from "./rows.ts";
import { addStep, type Step } from "./steps.ts";

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

/** Imports into some tables, and keeps what that changed if it did. Part of the caller's transaction. */
export function takeImportStep(db: WritableDb, places: readonly Place[], work: () => void, step: Step): void {
  const before = rowsOfTables(db, places);
  work();
  const rows = difference(before, rowsOfTables(db, places));
  if (rows.length > 0) addStep(db, step, rows, null);
}
