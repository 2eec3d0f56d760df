import { randomUUID } from "node:crypto";
import { fold } from "../../domain/people/fold.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Store, topics } from "../../store/connection/store.ts";
import { eraseAthlete } from "../../store/erasure/erase.ts";
import type { Erasure } from "../../store/erasure/erase-log.ts";
import { countMentions } from "../../store/erasure/erase-mentions.ts";
import { heldRows } from "../../store/erasure/held.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { namelessOf } from "../../store/tables/nameless.ts";

/** By what somebody is found again in an earlier backup: every record that was made one with theirs, and every name. */
export interface Traces {
  readonly ids: ReadonlySet<number>;
  readonly names: readonly string[];
  /** Whether results may stay without a name: as they agreed last. */
  readonly share: boolean;
}

/** Returns the traces of somebody before they are erased. They are kept nowhere. */
export function tracesOf(db: ReadableDb, athlete: Athlete): Traces {
  const ids = new Set([athlete.id]);
  const names = new Map([[fold(athlete.name), athlete.name]]);
  for (const { place, before, after } of heldRows(db, athlete.id).step_row) {
    if (place !== "athlete") continue;
    for (const text of [before, after]) {
      if (text === null) continue;
      const { id, name } = JSON.parse(text) as { id: number; name: string };
      ids.add(id);
      names.set(fold(name), name);
    }
  }
  return { ids, names: [...names.values()], share: athlete.share };
}

/**
 * Takes somebody out of a store of before: everybody with one of their ids and names, and everybody of one of their names
 * who is nobody of now (`living`: the ids in the store of now). Returns false where it can't be told who they are in it,
 * or where only a note names them.
 */
export function takeOutOf(
  store: Store,
  traces: Traces,
  living: ReadonlySet<number>,
  erasure: Erasure,
): boolean {
  const folded = new Set(traces.names.map(fold));
  const all = allAthletes(store.db);
  const isNamed = ({ name }: Athlete) => folded.has(fold(name));
  const meant = all.filter((each) => isNamed(each) && (traces.ids.has(each.id) || !living.has(each.id)));
  if (all.some((each) => traces.ids.has(each.id) && !isNamed(each))) return false;
  if (meant.length === 0) return !traces.names.some((name) => countMentions(store.db, 0, name) > 0);
  store.write(topics, (db) => {
    for (const [index, athlete] of meant.entries()) {
      const id = index === 0 ? erasure.id : randomUUID();
      const kept = traces.share ? namelessOf(db, athlete, randomUUID) : [];
      eraseAthlete(db, athlete, { ...erasure, id }, kept);
    }
  });
  // Another name of theirs may stand in a note about somebody else.
  return !traces.names.some((name) => !hasNamesake(all, meant, name) && countMentions(store.db, 0, name) > 0);
}

function hasNamesake(all: readonly Athlete[], meant: readonly Athlete[], name: string): boolean {
  return all.some((each) => !meant.includes(each) && fold(each.name) === fold(name));
}
