import { execute, type WritableDb } from "../connection/database.ts";
import { type Athlete, dropEmptyLeague } from "../tables/athletes.ts";
import { addNamelessMark, type NamelessMark } from "../tables/nameless.ts";
import type { Erasure } from "./erase-log.ts";
import { takeOutMentions } from "./erase-mentions.ts";
import { heldTables } from "./held-tables.ts";

/**
 * Deletes all data about an athlete, past the triggers that refuse deletion, and keeps the given nameless marks. In
 * others' rows it removes the name from notes, and the note that an attempt replaced one of theirs. Part of the
 * caller's transaction, which writes the audit line; a failure undoes it all. The file still has to be rewritten
 * (`writeAnew`).
 */
export function eraseAthlete(
  db: WritableDb,
  athlete: Athlete,
  { id, at, by }: Erasure,
  kept: readonly NamelessMark[],
): void {
  const athleteId = athlete.id;
  const permit =
    "INSERT INTO erasing (athlete_id, erasure_id, at, erased_by) VALUES (@athleteId, @id, @at, @by)";
  execute(db, permit, { athleteId, id, at, by });
  takeOutMentions(db, athleteId, athlete.name);
  const cut = `UPDATE attempt SET replaces = NULL WHERE athlete_id <> @athleteId
    AND replaces IN (SELECT id FROM attempt WHERE athlete_id = @athleteId)`;
  execute(db, cut, { athleteId });
  removeRows(db, athlete);
  for (const mark of kept) addNamelessMark(db, mark);
  execute(db, "DELETE FROM erasing WHERE athlete_id = @athleteId", { athleteId });
}

/** Deletes an athlete without attempts; the triggers on attempts and taps refuse any other. */
export function removeAthlete(db: WritableDb, athlete: Athlete): void {
  removeRows(db, athlete);
}

function removeRows(db: WritableDb, athlete: Athlete): void {
  for (const { remove } of heldTables) execute(db, remove, { athleteId: athlete.id });
  dropEmptyLeague(db, athlete.leagueId);
}
