import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";
import type { BoardConsent, Category } from "../tables/athletes.ts";
import type { EntrantState, LeftOut } from "../tables/entrants.ts";
import { type HeldTableName, heldTables } from "./held-tables.ts";

/** All rows that the store holds about one athlete, with the schema's column names. */
export interface HeldRows {
  readonly athlete: readonly AthleteRow[];
  readonly entrant: readonly { day_id: number; state: EntrantState; bib: number | null; since: string }[];
  readonly left_out: readonly (OfDay & {
    kind: LeftOut["kind"];
    reason: string;
    decided_by: string;
    at: string;
  })[];
  readonly call: readonly (OfDay & { at: string; device_id: string | null })[];
  readonly absence: readonly (OfDay & { id: string; noted_by: string; at: string })[];
  readonly attempt: readonly AttemptRow[];
  readonly void: readonly { attempt_id: string; reason: string; voided_by: string; at: string }[];
  readonly mark: readonly MarkRow[];
  readonly past_mark: readonly PastMarkRow[];
  readonly past_void: readonly PastVoidRow[];
  readonly study_reading: readonly StudyReadingRow[];
  readonly step_row: readonly StepRowRow[];
  readonly heat_lane: readonly { heat_id: string; lane: number; day_id: number; variant: string }[];
  readonly heat_event: readonly EventRow[];
}

interface OfDay {
  readonly day_id: number;
  readonly test: TestCode;
}

interface AthleteRow {
  readonly id: number;
  readonly league_id: number;
  readonly name: string;
  readonly number: string;
  readonly birth_year: number | null;
  readonly category: Category | null;
  readonly guardian_consent: number;
  readonly board: BoardConsent;
  readonly share: number;
  readonly asked: number;
}

interface AttemptRow extends OfDay {
  readonly seq: number;
  readonly id: string;
  readonly variant: string;
  readonly slot: string;
  /** JSON of the test's own attempt schema. */
  readonly seen: string;
  readonly entered_by: string;
  readonly note: string;
  readonly source: "station" | "sheet" | "heat";
  readonly at: string;
  readonly replaces: string | null;
  readonly heat_id: string | null;
  readonly result: string | null;
  readonly performed: string | null;
}

interface MarkRow extends OfDay {
  readonly variant: string;
  readonly fingerprint: string;
  readonly state: "complete" | "incomplete" | "unfinished";
  readonly value: number | null;
  /** JSON of the mark. */
  readonly detail: string;
  readonly seq: number;
  readonly rules: number;
  readonly position: number | null;
  readonly rest_minutes: number | null;
}

interface PastMarkRow {
  readonly fingerprint: string;
  readonly date: string;
  readonly test: TestCode;
  readonly variant: string;
  readonly value: number;
}

interface PastVoidRow extends PastMarkRow {
  readonly id: string;
  readonly instead: number | null;
  readonly reason: string;
  readonly voided_by: string;
  readonly at: string;
}

interface StudyReadingRow {
  readonly seq: number;
  readonly id: string;
  readonly study_id: string;
  readonly position: number;
  readonly value: number | null;
  readonly source: "sheet" | "keyed";
  readonly entered_by: string;
  readonly reason: string;
  readonly at: string;
}

interface StepRowRow {
  readonly step_seq: number;
  readonly place: string;
  /** JSON of the row before and after, or of what changed of it; null where it was not there. */
  readonly before: string | null;
  readonly after: string | null;
}

interface EventRow {
  readonly seq: number;
  readonly id: string;
  readonly heat_id: string;
  readonly lane: number;
  readonly kind: string;
  readonly at_ms: number;
  /** JSON. */
  readonly detail: string;
  readonly tapped_by: string;
  readonly at: string;
}

/** Reads all rows about one athlete at one moment, and nobody else's. */
export function heldRows(db: ReadableDb, athleteId: number): HeldRows {
  const rows = heldTables.map(({ name, read }): [HeldTableName, unknown[]] => [
    name,
    allRows(db, read, { athleteId }),
  ]);
  // The columns are those of the statements in held-tables.ts; a test checks them against the schema.
  return Object.fromEntries(rows) as unknown as HeldRows;
}
