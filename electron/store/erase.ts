import { type Athlete, dropEmptyLeague } from "./athletes.ts";
import { statement, type WritableDb } from "./database.ts";
import type { Erasure } from "./erase-log.ts";
import { takeOutMentions } from "./erase-mentions.ts";
import { heldTables } from "./held-tables.ts";
import { addNamelessMark, type NamelessMark } from "./nameless.ts";

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
  const permit = "INSERT INTO erasing (athlete_id, erasure_id, at, erased_by) VALUES (?, ?, ?, ?)";
  statement<[number, string, string, string]>(db, permit).run(athlete.id, id, at, by);
  takeOutMentions(db, athlete.id, athlete.name);
  const cut = `UPDATE attempt SET replaces = NULL WHERE athlete_id <> @athlete
    AND replaces IN (SELECT id FROM attempt WHERE athlete_id = @athlete)`;
  statement<[{ athlete: number }]>(db, cut).run({ athlete: athlete.id });
  removeRows(db, athlete);
  for (const mark of kept) addNamelessMark(db, mark);
  statement<[number]>(db, "DELETE FROM erasing WHERE athlete_id = ?").run(athlete.id);
}

/** Takes away somebody of whom nothing was seen; what guards attempts and taps refuses everybody else. */
export function removeAthlete(db: WritableDb, athlete: Athlete): void {
  removeRows(db, athlete);
}

function removeRows(db: WritableDb, athlete: Athlete): void {
  for (const { remove } of heldTables) statement<[number]>(db, remove).run(athlete.id);
  dropEmptyLeague(db, athlete.leagueId);
}
