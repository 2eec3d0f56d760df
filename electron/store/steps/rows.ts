import { createHash } from "node:crypto";
import { allRows, type ReadableDb, type Values } from "../connection/database.ts";
import { heldTables } from "../erasure/held-tables.ts";
import type { StepKind } from "./kinds.ts";

/** The tables whose rows a step may add, take away or change, with their keys. */
export const keysOf = {
  league: ["id"],
  athlete: ["id"],
  entrant: ["day_id", "athlete_id"],
  left_out: ["day_id", "athlete_id", "test"],
  call: ["day_id", "athlete_id"],
  absence: ["id"],
  attempt: ["seq"],
  heat_lane: ["heat_id", "lane"],
  mark: ["athlete_id", "test", "variant", "day_id"],
  past_mark: ["athlete_id", "fingerprint", "date"],
  past_void: ["id"],
  study_reading: ["seq"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type Place = keyof typeof keysOf;
export type Row = Values;

/** A row that a step added (`before` is null), took away (`after` is null) or changed: then both say what was changed. */
export interface StepRow {
  /** `digest`: no row, but how everything about an athlete was left, to see later whether it still is. */
  readonly place: Place | "digest";
  readonly athleteId: number | null;
  /** Before the step. */
  readonly key: Row;
  readonly before: Row | null;
  readonly after: Row | null;
}

/** All rows of some tables at one moment, by table and key. */
export type Snapshot = ReadonlyMap<string, { readonly place: Place; readonly row: Row }>;

/** Reads all rows about some athletes but for what belongs to their attempts and lanes, and all leagues. */
export function rowsAbout(db: ReadableDb, athleteIds: readonly number[]): Snapshot {
  const snapshot = new Map<string, { place: Place; row: Row }>();
  for (const { name, read } of heldTables) {
    if (!isPlace(name)) continue;
    for (const athleteId of athleteIds) addRows(snapshot, name, allRows(db, read, { athleteId }));
  }
  addRows(snapshot, "league", allRows(db, "SELECT * FROM league"));
  return snapshot;
}

/**
 * Reads what an import may change of what is there: all leagues, and of some athletes what a sheet of its kind says. What it
 * adds under new numbers is told by those (`added.ts`).
 */
export function rowsOfImport(db: ReadableDb, kind: StepKind, athleteIds: readonly number[]): Snapshot {
  const snapshot = new Map<string, { place: Place; row: Row }>();
  for (const place of changedBy[kind] ?? []) {
    const owner = place === "athlete" ? "id" : "athlete_id";
    const which = place === "league" ? "" : `WHERE ${owner} IN (SELECT value FROM json_each(@ids))`;
    const sql = `SELECT * FROM "${place}" ${which}`;
    const ids = place === "league" ? {} : { ids: JSON.stringify(athleteIds) };
    addRows(snapshot, place, allRows(db, sql, ids));
  }
  return snapshot;
}

const changedBy: Partial<Readonly<Record<StepKind, readonly Place[]>>> = {
  roster: ["league", "athlete", "entrant"],
  past: ["past_mark"],
};

function addRows(
  snapshot: Map<string, { place: Place; row: Row }>,
  place: Place,
  rows: readonly Row[],
): void {
  for (const row of rows) snapshot.set(`${place} ${JSON.stringify(keyIn(place, row))}`, { place, row });
}

function isPlace(name: string): name is Place {
  return name in keysOf;
}

export function keyIn(place: Place, row: Row): Row {
  return Object.fromEntries(keysOf[place].map((column) => [column, row[column] ?? null]));
}

/** Says what became of rows from one moment to the next; one that only went to somebody else is a change. */
export function difference(before: Snapshot, after: Snapshot): StepRow[] {
  const changed: StepRow[] = [];
  const gone: StepRow[] = [];
  const come = new Map<string, StepRow[]>();
  for (const [name, { place, row }] of before) {
    const now = after.get(name)?.row;
    if (now === undefined) gone.push(asRow(place, row, row, null));
    else if (JSON.stringify(now) !== JSON.stringify(row)) changed.push(changedRow(place, row, now));
  }
  for (const [name, { place, row }] of after) {
    if (before.has(name)) continue;
    const alike = `${place} ${withoutOwner(row)}`;
    const rows = come.get(alike) ?? [];
    rows.push(asRow(place, row, null, row));
    come.set(alike, rows);
  }
  const left = gone.filter((row) => {
    const moved = come.get(`${row.place} ${withoutOwner(row.before)}`)?.pop();
    if (moved?.after == null || row.before === null || row.place === "digest") return true;
    changed.push(changedRow(row.place, row.before, moved.after));
    return false;
  });
  return [...left, ...changed, ...[...come.values()].flat()];
}

function withoutOwner(row: Row | null): string {
  return JSON.stringify({ ...row, athlete_id: null });
}

function asRow(place: Place, row: Row, before: Row | null, after: Row | null): StepRow {
  const owner = place === "athlete" ? row.id : row.athlete_id;
  return {
    place,
    athleteId: typeof owner === "number" ? owner : null,
    key: keyIn(place, row),
    before,
    after,
  };
}

/** Athletes and leagues are kept whole: a history shows them, and numbers may change places. */
function changedRow(place: Place, before: Row, after: Row): StepRow {
  const isWhole = place === "athlete" || place === "league";
  const columns = Object.keys(before).filter((column) => isWhole || before[column] !== after[column]);
  const only = (row: Row) => Object.fromEntries(columns.map((column) => [column, row[column] ?? null]));
  return {
    ...asRow(place, after, null, null),
    key: keyIn(place, before),
    before: only(before),
    after: only(after),
  };
}

/** What is no reason to leave a step as it is: calls end by themselves, and marks follow from attempts. */
const undigested: readonly Place[] = ["call", "mark", "league"];

/** A hash of all rows of each table, to see later which of them are no longer the same. */
export function digestsOf(snapshot: Snapshot): Row {
  const hashes = new Map<Place, ReturnType<typeof createHash>>();
  for (const [name, { place, row }] of [...snapshot].sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (undigested.includes(place)) continue;
    const hash = hashes.get(place) ?? createHash("sha256");
    hash.update(`${name} ${JSON.stringify(digested(row))}\n`);
    hashes.set(place, hash);
  }
  return Object.fromEntries([...hashes].map(([place, hash]) => [place, hash.digest("hex")]));
}

/** A row without a column that came after digests were kept, and that nothing changes. */
function digested({ performed: _, ...row }: Row): Row {
  return row;
}
