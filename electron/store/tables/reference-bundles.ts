import type { MarkBounds } from "../../domain/privacy/coding.ts";
import type { AlikeMarks, Bundle, BundleTest, ToldCategory } from "../../domain/reference/bundle.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { noteInTables } from "./reference-tables.ts";

/** One bundle from elsewhere. */
export interface KeptReference {
  readonly id: number;
  /** The organiser's name for its place of origin; bundles of one origin are compared together. */
  readonly origin: string;
  readonly kind: Bundle["kind"];
  /** Hash of the whole file, in hexadecimal digits. */
  readonly sha256: string;
  readonly addedAt: string;
  /** Publisher of a table in which this bundle is too; null when it is in none that is held. */
  readonly inTableOf: string | null;
}

const columns = `id, origin, kind, sha256, added_at AS addedAt,
  (SELECT min(publisher.name) FROM reference_in_table
    JOIN reference_table ON reference_table.id = table_id
    JOIN publisher ON publisher.id = publisher_id
    WHERE reference_id = reference.id) AS inTableOf`;

/** Returns every stored bundle, by origin, the newest of each origin first. */
export function allReferences(db: ReadableDb): KeptReference[] {
  const sql = `SELECT ${columns} FROM reference ORDER BY origin COLLATE NOCASE, origin, id DESC`;
  return allRows(db, sql);
}

/** Finds a stored bundle with that file's hash or with the same content; undefined when there is none. */
export function referenceOf(
  db: ReadableDb,
  file: { readonly sha256: string; readonly contentSha256: string },
): KeptReference | undefined {
  const sql = `SELECT ${columns} FROM reference WHERE sha256 = @sha256 OR content_sha256 = @contentSha256 LIMIT 1`;
  const { sha256, contentSha256 } = file;
  return firstRow(db, sql, { sha256, contentSha256 });
}

/**
 * Stores a bundle with all its rows, notes in which tables it is too, and returns its id. It must not be stored already.
 */
export function addReference(
  db: WritableDb,
  reference: Omit<KeptReference, "id" | "inTableOf">,
  bundle: Pick<Bundle, "contentSha256" | "tests" | "marks">,
): number {
  const sql = `INSERT INTO reference (origin, kind, sha256, content_sha256, added_at)
    VALUES (@origin, @kind, @sha256, @contentSha256, @addedAt)`;
  const { contentSha256 } = bundle;
  const id = Number(execute(db, sql, { ...reference, contentSha256 }).lastInsertRowid);
  for (const test of bundle.tests) addTest(db, id, test);
  for (const marks of bundle.marks) addMarks(db, id, marks);
  noteInTables(db, { id, contentSha256 });
  return id;
}

function addTest(db: WritableDb, id: number, { test, variant, fingerprint }: BundleTest): void {
  const sql = `INSERT INTO reference_test (reference_id, test, variant, fingerprint)
    VALUES (@id, @test, @variant, @fingerprint)`;
  execute(db, sql, { id, test, variant, fingerprint });
}

function addMarks(db: WritableDb, id: number, marks: AlikeMarks): void {
  const { test, variant, category, ageBand, quarter, low, high, count } = marks;
  const sql = `INSERT INTO reference_mark
    (reference_id, test, variant, category, age_band, quarter, low, high, marks)
    VALUES (@id, @test, @variant, @category, @ageBand, @quarter, @low, @high, @count)`;
  execute(db, sql, { id, test, variant, category, ageBand, quarter, low, high, count });
}

/** Deletes a bundle with all its rows; false when it is unknown. */
export function removeReference(db: WritableDb, id: number): boolean {
  return execute(db, "DELETE FROM reference WHERE id = @id", { id }).changes > 0;
}

/** A bundle's marks of one test and variant. */
export interface ReferenceTest extends BundleTest {
  readonly marks: number;
}

/** Returns every test and variant of which a bundle has marks. */
export function testsOfReference(db: ReadableDb, id: number): ReferenceTest[] {
  const sql = `SELECT test, variant, fingerprint, sum(marks) AS marks
    FROM reference_test JOIN reference_mark USING (reference_id, test, variant)
    WHERE reference_id = @id GROUP BY test, variant, fingerprint`;
  return allRows(db, sql, { id });
}

/** Returns the quarters, or years, of a bundle's marks, in order. */
export function quartersOfReference(db: ReadableDb, id: number): string[] {
  const sql = "SELECT DISTINCT quarter FROM reference_mark WHERE reference_id = @id ORDER BY quarter";
  return allRows<{ quarter: string }>(db, sql, { id }).map(({ quarter }) => quarter);
}

/** Marks of one origin, test, fingerprint and category with the same bounds. */
export interface MarksOfOrigin extends MarkBounds {
  readonly origin: string;
  readonly category: ToldCategory;
  readonly count: number;
}

/**
 * Returns all marks of a fingerprint from bundles, by origin. Those of a bundle that is also in a table that may be used
 * on that day (ISO 8601) are left out: there they count already.
 */
export function marksFromElsewhere(db: ReadableDb, fingerprint: string, date: string): MarksOfOrigin[] {
  const sql = `SELECT origin, category, low, high, sum(marks) AS count
    FROM reference_test
    JOIN reference ON reference.id = reference_id
    JOIN reference_mark USING (reference_id, test, variant)
    WHERE fingerprint = @fingerprint AND reference.id NOT IN (
      SELECT reference_in_table.reference_id FROM reference_in_table
      JOIN reference_table ON reference_table.id = table_id WHERE valid_until >= @date)
    GROUP BY origin, category, low, high
    ORDER BY origin, category, low, high`;
  return allRows(db, sql, { fingerprint, date });
}
