import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { type Athlete, dropEmptyLeague } from "../tables/athletes.ts";
import { addNamelessMark, type NamelessMark } from "../tables/nameless.ts";
import type { Erasure } from "./erase-log.ts";
import { takeOutMentions } from "./erase-mentions.ts";
import { heldTables, sameAthlete } from "./held-tables.ts";

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
  const leagueIds = leaguesOf(db, athlete);
  removeRows(db, athlete);
  forgetLeagues(db, leagueIds);
  for (const mark of kept) addNamelessMark(db, mark);
  execute(db, "DELETE FROM erasing WHERE athlete_id = @athleteId", { athleteId });
}

/** Returns the leagues that an athlete is of, and those that the history of steps has for them. */
function leaguesOf(db: ReadableDb, { id: athleteId, leagueId }: Athlete): Set<number> {
  const sql = `SELECT json_extract(before, '$.league_id') AS was, json_extract(after, '$.league_id') AS now FROM step_row
    WHERE place = 'athlete' AND athlete_id IN ${sameAthlete}`;
  const rows = allRows<{ was: number | null; now: number | null }>(db, sql, { athleteId });
  return new Set([leagueId, ...rows.flatMap(({ was, now }) => [was ?? leagueId, now ?? leagueId])]);
}

/** Forgets the names of leagues that nobody is of any more: one that had a single athlete says who that was. */
function forgetLeagues(db: WritableDb, leagueIds: ReadonlySet<number>): void {
  const sql = `DELETE FROM step_row WHERE place = 'league' AND json_extract(row_key, '$.id') = @leagueId
    AND NOT EXISTS (SELECT 1 FROM league WHERE id = @leagueId
      AND folded IN (json_extract(before, '$.folded'), json_extract(after, '$.folded')))`;
  for (const leagueId of leagueIds) execute(db, sql, { leagueId });
}

/** Deletes an athlete without attempts; the triggers on attempts and taps refuse any other. */
export function removeAthlete(db: WritableDb, athlete: Athlete): void {
  removeRows(db, athlete);
}

function removeRows(db: WritableDb, athlete: Athlete): void {
  for (const { remove } of heldTables) execute(db, remove, { athleteId: athlete.id });
  dropEmptyLeague(db, athlete.leagueId);
}
