import { allRows, type Database, firstRow, type ReadableDb } from "./database.ts";

/** Stands in `touched` for all athletes, where days have their ids. */
const ofAthletes = -1;

/** Says that the marks of a day have changed (0: those imported of earlier times). A number that was never there. */
const touch = (day: string) => `INSERT INTO touched VALUES (${day}, random())
  ON CONFLICT DO UPDATE SET stamp = excluded.stamp`;

/** Triggers of this connection alone: the file knows nothing of them. */
function watch(name: string, when: string, ...days: string[]): string {
  const steps = days.map((day) => `${touch(day)};`).join(" ");
  return `CREATE TEMP TRIGGER touched_by_${name} AFTER ${when} BEGIN ${steps} END;`;
}

/** Notes from now on which days' marks change, so that what is worked out from all the others can be kept. */
export function watchMarks(db: Database): void {
  db.exec(`
    CREATE TEMP TABLE touched (day_id INTEGER PRIMARY KEY, stamp INTEGER NOT NULL);
    ${watch("new_mark", "INSERT ON main.mark", "NEW.day_id")}
    ${watch("mark", "UPDATE ON main.mark", "OLD.day_id", "NEW.day_id")}
    ${watch("lost_mark", "DELETE ON main.mark", "OLD.day_id")}
    ${watch("date", "UPDATE OF date ON main.day", "NEW.id")}
    ${watch("new_past", "INSERT ON main.past_mark", "0")}
    ${watch("past", "UPDATE ON main.past_mark", "0")}
    ${watch("lost_past", "DELETE ON main.past_mark", "0")}
    ${watch("athlete", "UPDATE ON main.athlete", `${ofAthletes}`)}
    ${watch("lost_athlete", "DELETE ON main.athlete", `${ofAthletes}`)}
    ${watch("league", "UPDATE ON main.league", `${ofAthletes}`)}`);
}

/**
 * Returns a text that is another one whenever an athlete was added, changed or deleted. New ones are seen by their ids, none
 * of which is given twice: nothing has to be noted at each row of a long roster.
 */
export function stampOfAthletes(db: ReadableDb): string {
  const sql = `SELECT ifnull((SELECT max(id) FROM athlete), 0) || ' '
    || ifnull((SELECT stamp FROM touched WHERE day_id = ${ofAthletes}), 0) AS stamp`;
  return firstRow<{ stamp: string }>(db, sql)?.stamp ?? "";
}

/** Returns a text that is another one whenever marks of any day but this one (0: of any day) have changed. */
function stampApartFrom(db: ReadableDb, dayId: number): string {
  // As text: the numbers are larger than JavaScript's own.
  const sql = `SELECT day_id || ' ' || stamp AS stamp FROM touched
    WHERE day_id >= 0 AND (@dayId = 0 OR day_id <> @dayId) ORDER BY day_id`;
  return allRows<{ stamp: string }>(db, sql, { dayId })
    .map(({ stamp }) => stamp)
    .join(", ");
}

/** Values kept for each store: of the day at hand, of none, and of a few that somebody looks at again. */
const most = 6;

/**
 * Keeps what is worked out from the marks of all days but one (0: of all) until one of those marks changes: while a day
 * is held, an entry of it never asks again. A stamp is never used twice, so that a value read in a transaction that is
 * rolled back is not taken for a later one.
 */
export function keptApartFromDay<Value>(
  read: (db: ReadableDb, exceptDayId: number) => Value,
): (db: ReadableDb, exceptDayId: number) => Value {
  const stores = new WeakMap<ReadableDb, Map<number, { readonly stamp: string; readonly value: Value }>>();
  return (db, exceptDayId) => {
    const kept = stores.get(db) ?? new Map();
    stores.set(db, kept);
    const stamp = stampApartFrom(db, exceptDayId);
    const there = kept.get(exceptDayId);
    if (there?.stamp === stamp) return there.value;
    const value = read(db, exceptDayId);
    kept.delete(exceptDayId);
    kept.set(exceptDayId, { stamp, value });
    for (const oldest of [...kept.keys()].slice(0, -most)) kept.delete(oldest);
    return value;
  };
}
