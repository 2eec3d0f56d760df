import { execute, firstRow, type WritableDb } from "../connection/database.ts";
import { keyIn, type Place, type Row, type StepRow } from "./rows.ts";

type OfPlace = StepRow & { readonly place: Place };

/** Puts back what a step changed, as it was. Needs the step's permit; part of the caller's transaction. */
export function restoreRows(db: WritableDb, all: readonly StepRow[]): void {
  const rows = all.filter((row): row is OfPlace => row.place !== "digest");
  const leagueIds = restoreLeagues(db, rows);
  const others = rows.filter(({ place }) => place !== "league");
  const changed = others.filter(({ before, after }) => before !== null && after !== null);
  for (const row of others) if (row.before === null) remove(db, row);
  // Numbers and names may go from one to the other: nobody has any for a moment.
  for (const row of changed) if (row.place === "athlete") park(db, Number(row.key.id));
  for (const row of changed) change(db, row, withLeague(row.before ?? {}, leagueIds));
  for (const { place, before, after } of others) {
    if (before !== null && after === null) insert(db, place, withLeague(before, leagueIds));
  }
}

/** Brings leagues back; one whose name is there again, or whose id another has by now, goes on under another id. */
function restoreLeagues(db: WritableDb, rows: readonly OfPlace[]): ReadonlyMap<number, number> {
  const ids = new Map<number, number>();
  for (const { place, key, before, after } of rows) {
    if (place !== "league" || before === null) continue;
    if (after !== null) {
      change(db, { place, key, after }, before);
      continue;
    }
    const id = Number(before.id);
    const sql = "SELECT id FROM league WHERE folded = @folded";
    const there = firstRow<{ id: number }>(db, sql, { folded: before.folded ?? "" });
    if (there !== undefined) ids.set(id, there.id);
    else if (firstRow(db, "SELECT 1 FROM league WHERE id = @id", { id }) === undefined)
      insert(db, place, before);
    else ids.set(id, insert(db, place, { name: before.name ?? "", folded: before.folded ?? "" }));
  }
  return ids;
}

function withLeague(row: Row, ids: ReadonlyMap<number, number>): Row {
  const moved = ids.get(Number(row.league_id));
  return moved === undefined ? row : { ...row, league_id: moved };
}

function park(db: WritableDb, id: number): void {
  execute(db, "UPDATE athlete SET number = '', folded = char(1) || id WHERE id = @id", { id });
}

function remove(db: WritableDb, { place, key }: OfPlace): void {
  execute(db, `DELETE FROM "${place}" WHERE ${where(key)}`, keyed(key));
}

function change(
  db: WritableDb,
  { place, key, after }: Pick<OfPlace, "place" | "key" | "after">,
  to: Row,
): void {
  const now = keyIn(place, { ...key, ...after });
  const set = columnsOf(to).map((column) => `${column} = @${column}`);
  execute(db, `UPDATE "${place}" SET ${set.join(", ")} WHERE ${where(now)}`, { ...to, ...keyed(now) });
}

function insert(db: WritableDb, place: Place, row: Row): number {
  const columns = columnsOf(row);
  const values = columns.map((column) => `@${column}`);
  const sql = `INSERT INTO "${place}" (${columns.join(", ")}) VALUES (${values.join(", ")})`;
  return Number(execute(db, sql, row).lastInsertRowid);
}

function where(key: Row): string {
  return columnsOf(key)
    .map((column) => `${column} = @key_${column}`)
    .join(" AND ");
}

function keyed(key: Row): Row {
  return Object.fromEntries(Object.entries(key).map(([column, value]) => [`key_${column}`, value]));
}

/** A column's name stands in the statement itself, so that it may be nothing else. */
function columnsOf(row: Row): string[] {
  const columns = Object.keys(row);
  const odd = columns.find((column) => !/^[a-z_]+$/.test(column));
  if (odd !== undefined) throw new Error(`${odd} is no column's name`);
  return columns;
}
