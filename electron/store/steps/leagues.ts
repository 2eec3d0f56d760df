import { execute, type WritableDb } from "../connection/database.ts";

/** Gives a league another spelling. Part of a step. */
export function renameLeague(db: WritableDb, leagueId: number, name: string, folded: string): void {
  const sql = "UPDATE league SET name = @name, folded = @folded WHERE id = @leagueId";
  execute(db, sql, { leagueId, name, folded });
}

/** Moves all athletes of one league to another, and drops the empty one. Part of a step. */
export function joinLeagues(db: WritableDb, goneId: number, keptId: number): void {
  execute(db, "UPDATE athlete SET league_id = @keptId WHERE league_id = @goneId", { goneId, keptId });
  execute(db, "DELETE FROM league WHERE id = @goneId", { goneId });
}
