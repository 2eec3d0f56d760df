import type { MarkBounds } from "../../domain/privacy/coding.ts";
import type { AlikeMarks, Bundle, BundleTest, ToldCategory } from "../../domain/reference/bundle.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** One bundle from elsewhere. */
export interface KeptReference {
  readonly id: number;
  /** What the organiser calls the place it is from; bundles of one origin are compared with together. */
  readonly origin: string;
  readonly kind: Bundle["kind"];
  /** Of the whole file, in hexadecimal digits. */
  readonly sha256: string;
  readonly addedAt: string;
}

const columns = "id, origin, kind, sha256, added_at AS addedAt";

/** Every bundle that is kept, by origin, the newest of one origin first. */
export function allReferences(db: ReadableDb): KeptReference[] {
  const sql = `SELECT ${columns} FROM reference ORDER BY origin COLLATE NOCASE, origin, id DESC`;
  return allRows(db, sql);
}

/** The bundle of that file, or of the same content in another file; undefined when neither is kept. */
export function referenceOf(
  db: ReadableDb,
  file: { readonly sha256: string; readonly contentSha256: string },
): KeptReference | undefined {
  const sql = `SELECT ${columns} FROM reference WHERE sha256 = @sha256 OR content_sha256 = @contentSha256 LIMIT 1`;
  const { sha256, contentSha256 } = file;
  return firstRow(db, sql, { sha256, contentSha256 });
}

/** Keeps a bundle with all its rows; returns its id. It must not be kept already. */
export function addReference(
  db: WritableDb,
  reference: Omit<KeptReference, "id">,
  bundle: Pick<Bundle, "contentSha256" | "tests" | "marks">,
): number {
  const sql = `INSERT INTO reference (origin, kind, sha256, content_sha256, added_at)
    VALUES (@origin, @kind, @sha256, @contentSha256, @addedAt)`;
  const { contentSha256 } = bundle;
  const id = Number(execute(db, sql, { ...reference, contentSha256 }).lastInsertRowid);
  for (const test of bundle.tests) addTest(db, id, test);
  for (const marks of bundle.marks) addMarks(db, id, marks);
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

/** Takes a bundle away with everything of it; false when it is not kept. */
export function removeReference(db: WritableDb, id: number): boolean {
  return execute(db, "DELETE FROM reference WHERE id = @id", { id }).changes > 0;
}

/** What a bundle holds of one way of doing one test. */
export interface ReferenceTest extends BundleTest {
  readonly marks: number;
}

/** Every way of every test of which a bundle has marks. */
export function testsOfReference(db: ReadableDb, id: number): ReferenceTest[] {
  const sql = `SELECT test, variant, fingerprint, sum(marks) AS marks
    FROM reference_test JOIN reference_mark USING (reference_id, test, variant)
    WHERE reference_id = @id GROUP BY test, variant, fingerprint`;
  return allRows(db, sql, { id });
}

/** The quarters, or years, that a bundle's marks are from, in order. */
export function quartersOfReference(db: ReadableDb, id: number): string[] {
  const sql = "SELECT DISTINCT quarter FROM reference_mark WHERE reference_id = @id ORDER BY quarter";
  return allRows<{ quarter: string }>(db, sql, { id }).map(({ quarter }) => quarter);
}

/** Marks of one origin, test, fingerprint and category that are told alike. */
export interface MarksOfOrigin extends MarkBounds {
  readonly origin: string;
  readonly category: ToldCategory;
  readonly count: number;
}

/** All marks of a fingerprint from elsewhere, by origin. */
export function marksFromElsewhere(db: ReadableDb, fingerprint: string): MarksOfOrigin[] {
  const sql = `SELECT origin, category, low, high, sum(marks) AS count
    FROM reference_test
    JOIN reference ON reference.id = reference_id
    JOIN reference_mark USING (reference_id, test, variant)
    WHERE fingerprint = @fingerprint
    GROUP BY origin, category, low, high
    ORDER BY origin, category, low, high`;
  return allRows(db, sql, { fingerprint });
}
