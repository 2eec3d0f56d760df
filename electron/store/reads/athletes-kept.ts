import type { ReadableDb } from "../connection/database.ts";
import { stampOfAthletes } from "../connection/stamp.ts";
import { type Athlete, allAthletes } from "../tables/athletes.ts";

/** An athlete with their place among everybody by league and name, from 0. */
interface Placed extends Athlete {
  readonly place: number;
}

/** Everybody in a store, by id. The same object as long as nobody is added, changed or deleted. */
export type Athletes = ReadonlyMap<Athlete["id"], Placed>;

const kept = new WeakMap<ReadableDb, { readonly stamp: string; readonly athletes: Athletes }>();

/** Returns everybody in the store, read once until somebody is added, changed or deleted. */
export function athletesOf(db: ReadableDb): Athletes {
  const stamp = stampOfAthletes(db);
  const there = kept.get(db);
  if (there?.stamp === stamp) return there.athletes;
  const athletes = new Map(allAthletes(db).map((each, place) => [each.id, { ...each, place }]));
  // What a transaction wrote may be rolled back, and an id be given again.
  if (!db.inTransaction) kept.set(db, { stamp, athletes });
  return athletes;
}
