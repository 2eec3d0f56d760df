import { fold } from "../../domain/people/fold.ts";
import {
  holdsBundle,
  type PackedTable,
  type TableTest,
  type ToldGroup,
  unpackGroups,
} from "../../domain/reference-table/packed.ts";
import type { ReferenceTable } from "../../domain/reference-table/table.ts";
import type { KnownPublisher } from "../../domain/reference-table/trust.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A publisher as remembered. */
export interface Publisher extends KnownPublisher {
  readonly id: number;
}

/** Returns every publisher that is remembered, also of tables that were removed, by name. */
export function allPublishers(db: ReadableDb): Publisher[] {
  const sql = `SELECT id, name AS publisher, public_key AS publicKey, known_since AS since FROM publisher
    ORDER BY folded_name`;
  return allRows(db, sql);
}

/** A table as it is listed. */
export interface KeptTable extends Pick<ReferenceTable, "publisher" | "publicKey" | "made" | "validUntil"> {
  readonly id: number;
  readonly sha256: string;
  readonly addedAt: string;
  /** Number of bundles that it is made of. */
  readonly bundles: number;
}

const tables = `SELECT reference_table.id, name AS publisher, public_key AS publicKey, made, valid_until AS validUntil,
    sha256, added_at AS addedAt, length(bundles) / 32 AS bundles
  FROM reference_table JOIN publisher ON publisher.id = publisher_id`;

/** Returns every table that is held, by its publisher's name. */
export function allTables(db: ReadableDb): KeptTable[] {
  return allRows(db, `${tables} ORDER BY folded_name`);
}

/** Returns the table held from whoever has that key; undefined when there is none. */
export function tableOfKey(db: ReadableDb, publicKey: string): KeptTable | undefined {
  return firstRow(db, `${tables} WHERE public_key = @publicKey`, { publicKey });
}

/**
 * Keeps a table in the place of the one held from the same key, and remembers that key with the table's name; returns
 * the table's id. The name must not belong to another key.
 */
export function addTable(
  db: WritableDb,
  table: PackedTable,
  { sha256, addedAt }: Pick<KeptTable, "sha256" | "addedAt">,
): number {
  const publisherId = remember(db, table, addedAt);
  execute(db, "DELETE FROM reference_table WHERE publisher_id = @publisherId", { publisherId });
  const sql = `INSERT INTO reference_table (publisher_id, sha256, made, valid_until, bundles, added_at)
    VALUES (@publisherId, @sha256, @made, @validUntil, @bundles, @addedAt)`;
  const { made, validUntil, bundles } = table;
  const row = { publisherId, sha256, made, validUntil, bundles, addedAt };
  const id = Number(execute(db, sql, row).lastInsertRowid);
  for (const rules of table.rules) addRules(db, id, rules);
  for (const { id: bundleId, contentSha256 } of broughtBundles(db)) {
    if (holdsBundle(table, contentSha256)) noteInTable(db, bundleId, id);
  }
  return id;
}

function remember(db: WritableDb, { publisher, publicKey }: PackedTable, since: string): number {
  const sql = `INSERT INTO publisher (name, folded_name, public_key, known_since)
    VALUES (@publisher, @folded, @publicKey, @since)
    ON CONFLICT (public_key) DO UPDATE SET name = excluded.name, folded_name = excluded.folded_name`;
  execute(db, sql, { publisher, folded: fold(publisher), publicKey, since });
  const found = firstRow<{ id: number }>(db, "SELECT id FROM publisher WHERE public_key = @publicKey", {
    publicKey,
  });
  if (found === undefined) throw new Error("A publisher was not remembered.");
  return found.id;
}

function addRules(db: WritableDb, tableId: number, rules: PackedTable["rules"][number]): void {
  const { test, variant, fingerprint, marks, halls, groups, from, to, told } = rules;
  const sql = `INSERT INTO reference_rules
      (table_id, fingerprint, test, variant, marks, halls, groups, first_quarter, last_quarter, told)
    VALUES (@tableId, @fingerprint, @test, @variant, @marks, @halls, @groups, @from, @to, @told)`;
  execute(db, sql, { tableId, fingerprint, test, variant, marks, halls, groups, from, to, told });
}

interface BroughtBundle {
  readonly id: number;
  readonly contentSha256: string;
}

function broughtBundles(db: ReadableDb): BroughtBundle[] {
  return allRows(db, "SELECT id, content_sha256 AS contentSha256 FROM reference");
}

function noteInTable(db: WritableDb, referenceId: number, tableId: number): void {
  const sql = "INSERT INTO reference_in_table (reference_id, table_id) VALUES (@referenceId, @tableId)";
  execute(db, sql, { referenceId, tableId });
}

/** Notes in which of the tables that are held a bundle is that was brought in by itself. */
export function noteInTables(db: WritableDb, { id, contentSha256 }: BroughtBundle): void {
  const held = allRows<{ id: number; bundles: Uint8Array }>(db, "SELECT id, bundles FROM reference_table");
  for (const table of held) if (holdsBundle(table, contentSha256)) noteInTable(db, id, table.id);
}

/** Removes a table; its publisher's key stays remembered. False when it is unknown. */
export function removeTable(db: WritableDb, id: number): boolean {
  return execute(db, "DELETE FROM reference_table WHERE id = @id", { id }).changes > 0;
}

/** Forgets a publisher's key, and removes the table that it signed. False when they are unknown. */
export function forgetPublisher(db: WritableDb, id: number): boolean {
  return execute(db, "DELETE FROM publisher WHERE id = @id", { id }).changes > 0;
}

/** Returns what a table that is held says of each test. */
export function testsOfTable(db: ReadableDb, tableId: number): TableTest[] {
  const sql = `SELECT test, variant, fingerprint, marks, halls, groups, first_quarter AS "from", last_quarter AS "to"
    FROM reference_rules WHERE table_id = @tableId ORDER BY fingerprint`;
  return allRows(db, sql, { tableId });
}

/** A group of a table that is held. */
interface GroupFromTable extends ToldGroup {
  readonly publisher: string;
}

/** Returns the groups by the rules of a fingerprint, of every table that may be used on a day (ISO 8601). */
export function groupsFromTables(db: ReadableDb, fingerprint: string, date: string): GroupFromTable[] {
  const sql = `SELECT name AS publisher, told
    FROM reference_rules
    JOIN reference_table ON reference_table.id = table_id
    JOIN publisher ON publisher.id = publisher_id
    WHERE fingerprint = @fingerprint AND valid_until >= @date
    ORDER BY folded_name`;
  const found = allRows<{ publisher: string; told: string }>(db, sql, { fingerprint, date });
  return found.flatMap(({ publisher, told }) => unpackGroups(told).map((group) => ({ publisher, ...group })));
}
