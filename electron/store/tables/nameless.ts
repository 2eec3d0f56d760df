import { consentOf } from "../../domain/privacy/consent.ts";
import { ageBandOf, type SharedCategory } from "../../domain/privacy/quasi.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";
import type { Athlete } from "./athletes.ts";

/** A complete mark of somebody erased who had agreed to share: the facts a bundle may say of it, and nothing else. */
export interface NamelessMark {
  /** Random: it links to nothing, and its order means nothing. */
  readonly id: string;
  readonly dayId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  /** In grains of the test. */
  readonly value: number;
  readonly ageBand: string;
  readonly category: SharedCategory;
}

const columns = "id, day_id AS dayId, test, variant, fingerprint, value, age_band AS ageBand, category";

/** Returns all nameless marks, or those of one day, by their random ids. */
export function namelessMarks(db: ReadableDb, dayId: number | null = null): NamelessMark[] {
  const sql = `SELECT ${columns} FROM nameless_mark WHERE @dayId IS NULL OR day_id = @dayId ORDER BY id`;
  return allRows(db, sql, { dayId });
}

export function addNamelessMark(db: WritableDb, mark: NamelessMark): void {
  const sql = `INSERT INTO nameless_mark (id, day_id, test, variant, fingerprint, value, age_band, category)
    VALUES (@id, @dayId, @test, @variant, @fingerprint, @value, @ageBand, @category)`;
  execute(db, sql, { ...mark });
}

type DayMark = Pick<NamelessMark, "dayId" | "test" | "variant" | "fingerprint" | "value"> & { date: string };

/**
 * Returns the marks that erasing an athlete would keep: complete ones from days on which they, and where needed the
 * guardian, agreed to share. `newId` gives random ids.
 */
export function namelessOf(db: ReadableDb, athlete: Athlete, newId: () => string): NamelessMark[] {
  // Ages are judged by the day on which people stood there (`domain/day/dates.ts`).
  const sql = `SELECT day_id AS dayId, test, variant, fingerprint, value,
      coalesce((SELECT min(on_date) FROM day_event WHERE day_id = day.id AND kind = 'opened'), day.date) AS date
    FROM mark JOIN day ON day.id = day_id WHERE athlete_id = @athleteId AND mark.state = 'complete'`;
  return allRows<DayMark>(db, sql, { athleteId: athlete.id })
    .filter(({ date }) => consentOf(athlete, date) === "given")
    .map(({ date, ...mark }) => ({
      ...mark,
      id: newId(),
      ageBand: ageBandOf(athlete.birthYear, date),
      category: athlete.category ?? "unknown",
    }));
}
