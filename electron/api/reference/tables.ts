import { z } from "zod";
import { refused } from "../../domain/reference/refused.ts";
import { bundlesIn, type PackedTable, spanOf, type TableTest } from "../../domain/reference-table/packed.ts";
import { type KnownPublisher, trustIn } from "../../domain/reference-table/trust.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import {
  allPublishers,
  allTables,
  forgetPublisher as forgetKey,
  addTable as keepTable,
  removeTable as removeKept,
  tableOfKey,
  testsOfTable,
} from "../../store/tables/reference-tables.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { allow } from "../door/trpc.ts";
import { createUploads } from "../door/uploads.ts";
import { inOrderOfTests, rulesHere } from "./content.ts";
import { shortKey } from "./signature.ts";

/** A table that was read, with the hash of what is signed. */
interface ReadTable {
  readonly table: PackedTable;
  readonly sha256: string;
}

/** Tables that may be added. */
const uploads = createUploads<ReadTable>(sentence("reference.gone"));

/**
 * Returns who is known to have signed a table by its key; undefined for a key and a name that are new here.
 * @throws Refusal `bad-input` for a name that belongs to another key, and for a table older than the one held.
 */
function requireTrusted(db: ReadableDb, { table }: ReadTable): KnownPublisher | undefined {
  const trust = trustIn(table, allPublishers(db));
  const { publisher, publicKey, made } = table;
  if (trust.kind === "other-key") {
    // In one piece, whatever the line: two keys are compared.
    const [key, known] = [publicKey, trust.as.publicKey].map((each) =>
      shortKey(each).replaceAll(" ", "\u00a0"),
    );
    const keys = { key: key ?? "", known: known ?? "" };
    throw refused(sentence("referenceTable.otherKey", { publisher: trust.as.publisher, ...keys }));
  }
  const held = tableOfKey(db, publicKey);
  if (held !== undefined && held.made > made) {
    throw refused(sentence("referenceTable.older", { publisher, date: held.made }));
  }
  return trust.kind === "first" ? undefined : trust.as;
}

/** Keeps a table at hand, to be added, and returns what it holds and what is known of its publisher. */
export function lookAtTable(desk: Desk, read: ReadTable) {
  const { db } = desk.store;
  const as = requireTrusted(db, read);
  const { table, sha256 } = read;
  const { publisher, made, validUntil, publicKey } = table;
  const held = tableOfKey(db, publicKey);
  return {
    kind: "table" as const,
    tableId: uploads.keep(desk, read),
    ...{ publisher, made, validUntil, key: shortKey(publicKey) },
    /** Since when the key is known (ISO 8601), and another name that it had; null for a new key. */
    ...{
      knownSince: as?.since ?? null,
      formerly: as === undefined || as.publisher === publisher ? null : as.publisher,
    },
    /** True if this very table is held already. */
    known: held?.sha256 === sha256,
    /** The day on which the one held was made that this one would replace. */
    replaces: held?.made ?? null,
    bundles: bundlesIn(table),
    ...contentOf(table.rules, db),
  };
}

/** Says of each test how many results and halls are behind it, and whether it has the rules here; and of all together. */
function contentOf(tests: readonly TableTest[], db: ReadableDb) {
  const rules = rulesHere(db);
  const told = inOrderOfTests(tests).map((each) => {
    const { test, variant, marks, halls, groups } = each;
    return { test, variant, marks, halls, groups, sameRules: rules(each) };
  });
  return {
    tests: told,
    marks: told.reduce((sum, { marks }) => sum + marks, 0),
    /** At least so many: the table doesn't say which halls did which test. */
    halls: Math.max(0, ...told.map(({ halls }) => halls)),
    quarters: [...new Set(spanOf(tests))],
  };
}

/** Adds an uploaded table in the place of an older one by the same key. The same table again changes nothing. */
export const addTable = allow("organiser")
  .input(z.object({ tableId: z.uuid() }))
  .mutation(({ ctx: { desk }, input: { tableId } }) => {
    const read = uploads.find(desk, tableId);
    const { table, sha256 } = read;
    return desk.store.write(["references"], (db) => {
      requireTrusted(db, read);
      const { publisher, publicKey } = table;
      if (tableOfKey(db, publicKey)?.sha256 === sha256) return { added: false, publisher };
      keepTable(db, table, { sha256, addedAt: desk.now().toISOString() });
      return { added: true, publisher };
    });
  });

/** Lists every table that is held, with what it holds, and every publisher that is remembered. */
export const listTables = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const today = isoDate(desk.now());
  const held = allTables(db);
  const tables = held.map(({ id, publisher, publicKey, made, validUntil, addedAt, bundles }) => ({
    ...{ id, publisher, key: shortKey(publicKey), made, validUntil, addedAt, bundles },
    /** True if it is not compared with any more. */
    expired: validUntil < today,
    ...contentOf(testsOfTable(db, id), db),
  }));
  const publishers = allPublishers(db).map(({ id, publisher, publicKey, since }) => ({
    ...{ id, publisher, key: shortKey(publicKey), since },
    hasTable: held.some((table) => table.publicKey === publicKey),
  }));
  return { tables, publishers };
});

/** Removes a table with all its effects; its publisher's key stays remembered. The same again changes nothing. */
export const removeTable = allow("organiser")
  .input(z.object({ id: z.int() }))
  .mutation(({ ctx: { desk }, input: { id } }) =>
    desk.store.write(["references"], (db) => ({ removed: removeKept(db, id) })),
  );

/** Forgets a publisher's key, with the table that it signed. The same again changes nothing. */
export const forgetPublisher = allow("organiser")
  .input(z.object({ id: z.int() }))
  .mutation(({ ctx: { desk }, input: { id } }) =>
    desk.store.write(["references"], (db) => ({ forgotten: forgetKey(db, id) })),
  );
