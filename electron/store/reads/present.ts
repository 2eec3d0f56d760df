import { allRows, firstRow, type ReadableDb } from "../connection/database.ts";
import { cachedUntilWrite } from "../connection/until-write.ts";
import type { BoardConsent } from "../tables/athletes.ts";
import type { EntrantState } from "../tables/entrants.ts";

/** An entrant of a day as a station shows them, with their name. */
export interface Present {
  readonly athleteId: number;
  readonly bib: number | null;
  readonly state: EntrantState;
  /** Time of reaching the state (ISO 8601 instant). */
  readonly since: string;
  readonly name: string;
  readonly number: string;
  readonly league: string;
}

const columns = `entrant.athlete_id AS athleteId, bib, state, since, athlete.name, number, league.name AS league`;
const source = `entrant JOIN athlete ON athlete.id = entrant.athlete_id JOIN league ON league.id = athlete.league_id`;

/**
 * Returns everybody on the day's list, by bib; those without one come first. All devices at stations read it after each
 * change, so it is read once for all.
 */
export const everybody: (db: ReadableDb, dayId: number) => readonly Present[] =
  cachedUntilWrite(readEverybody);

function readEverybody(db: ReadableDb, dayId: number): Present[] {
  const sql = `SELECT ${columns} FROM ${source} WHERE day_id = @dayId ORDER BY bib, entrant.athlete_id`;
  return allRows(db, sql, { dayId });
}

export function presentById(db: ReadableDb, dayId: number, athleteId: number): Present | undefined {
  const sql = `SELECT ${columns} FROM ${source} WHERE day_id = @dayId AND entrant.athlete_id = @athleteId`;
  return firstRow(db, sql, { dayId, athleteId });
}

export function presentByBib(db: ReadableDb, dayId: number, bib: number): Present | undefined {
  const sql = `SELECT ${columns} FROM ${source} WHERE day_id = @dayId AND bib = @bib`;
  return firstRow(db, sql, { dayId, bib });
}

/** What of an entrant says whether a guardian has to agree. */
export interface OfAge {
  readonly birthYear: number | null;
  readonly guardianConsent: boolean;
}

/** Returns that of everybody on the day's list, by athlete. */
export function agesOf(db: ReadableDb, dayId: number): ReadonlyMap<number, OfAge> {
  const sql = `SELECT athlete_id AS athleteId, birth_year AS birthYear, guardian_consent AS consent
    FROM entrant JOIN athlete ON athlete.id = entrant.athlete_id WHERE day_id = @dayId`;
  type Row = { athleteId: number; birthYear: number | null; consent: number };
  return new Map(
    allRows<Row>(db, sql, { dayId }).map(({ athleteId, birthYear, consent }) => [
      athleteId,
      { birthYear, guardianConsent: consent === 1 },
    ]),
  );
}

/** An entrant as the big screen may show them: derby name, bib and consent. */
export interface InPublic {
  readonly athleteId: number;
  readonly bib: number | null;
  readonly name: string;
  readonly board: BoardConsent;
}

/** Returns everybody on the day's list with their current consent. */
export function everybodyInPublic(db: ReadableDb, dayId: number): InPublic[] {
  const sql = `SELECT entrant.athlete_id AS athleteId, bib, athlete.name, board
    FROM ${source} WHERE day_id = @dayId`;
  return allRows(db, sql, { dayId });
}
