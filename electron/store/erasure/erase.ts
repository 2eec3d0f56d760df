import { execute, type WritableDb } from "../connection/database.ts";
import { type Athlete, dropEmptyLeague } from "../tables/athletes.ts";
import { addNamelessMark, type NamelessMark } from "../tables/nameless.ts";
import type { Erasure } from "./erase-log.ts";
import { takeOutMentions } from "./erase-mentions.ts";
import { heldTables } from "./held-tables.ts";

/**
 * Takes away all that is held about an athlete, whatever refuses deletion otherwise, and keeps the nameless marks given.
 * What others' rows say of the athlete goes too: the name in notes, and that an attempt took the place of theirs.
 * Part of the caller's transaction, which leaves the line of the audit; nothing of it stays when it fails. The file still
 * has to be written anew (`writeAnew`).
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

/** Takes away somebody of whom nothing was seen; what guards attempts and taps refuses everybody else. */
export function removeAthlete(db: WritableDb, athlete: Athlete): void {
  removeRows(db, athlete);
}

function removeRows(db: WritableDb, athlete: Athlete): void {
  for (const { remove } of heldTables) execute(db, remove, { athleteId: athlete.id });
  dropEmptyLeague(db, athlete.leagueId);
}
