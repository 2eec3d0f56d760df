import { fold } from "../../domain/people/fold.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

export type Category = "women" | "men" | "open";
/** The consent to be shown on the big screen. */
export type BoardConsent = "name" | "bib" | "hidden";

export interface Athlete {
  readonly id: number;
  readonly leagueId: number;
  readonly league: string;
  readonly name: string;
  /** 0 to 4 digits, as text: 07 is not 7. */
  readonly number: string;
  readonly birthYear: number | null;
  readonly category: Category | null;
  readonly guardianConsent: boolean;
  readonly board: BoardConsent;
  readonly share: boolean;
  /** True once the athlete answered the consent questions at the table. */
  readonly asked: boolean;
}

export type NewAthlete = Omit<Athlete, "id" | "league">;

interface AthleteRow extends Omit<Athlete, "guardianConsent" | "share" | "asked"> {
  readonly guardianConsent: number;
  readonly share: number;
  readonly asked: number;
}

const columns = `athlete.id, league_id AS leagueId, league.name AS league, athlete.name, number, birth_year AS birthYear,
  category, guardian_consent AS guardianConsent, board, share, asked`;
const source = "athlete JOIN league ON league.id = athlete.league_id";

function asAthlete(row: AthleteRow): Athlete {
  return {
    ...row,
    guardianConsent: row.guardianConsent === 1,
    share: row.share === 1,
    asked: row.asked === 1,
  };
}

/** Returns every athlete of the store, by league and name. */
export function allAthletes(db: ReadableDb): Athlete[] {
  const sql = `SELECT ${columns} FROM ${source} ORDER BY league.folded, athlete.folded, athlete.id`;
  return allRows<AthleteRow>(db, sql).map(asAthlete);
}

export function athleteById(db: ReadableDb, id: number): Athlete | undefined {
  const row = firstRow<AthleteRow>(db, `SELECT ${columns} FROM ${source} WHERE athlete.id = @id`, { id });
  return row === undefined ? undefined : asAthlete(row);
}

/** Finds whom a sheet or a volunteer means: by league and number, else by league and name (FORMATS, roster). */
export function athleteByIdentity(
  db: ReadableDb,
  league: string,
  number: string,
  name: string,
): Athlete | undefined {
  const which = number === "" ? "number = '' AND athlete.folded = @name" : "number = @number";
  const sql = `SELECT ${columns} FROM ${source} WHERE league.folded = @league AND ${which}`;
  const row = firstRow<AthleteRow>(db, sql, { league: fold(league), number, name: fold(name) });
  return row === undefined ? undefined : asAthlete(row);
}

/** Returns the id of the league with a name, which is added when new. */
export function leagueNamed(db: WritableDb, name: string): number {
  const folded = fold(name);
  const found = firstRow<{ id: number }>(db, "SELECT id FROM league WHERE folded = @folded", { folded });
  if (found !== undefined) return found.id;
  const sql = "INSERT INTO league (name, folded) VALUES (@name, @folded)";
  return Number(execute(db, sql, { name: name.trim(), folded }).lastInsertRowid);
}

/** Deletes a league that has no athletes any more. */
export function dropEmptyLeague(db: WritableDb, leagueId: number): void {
  const sql =
    "DELETE FROM league WHERE id = @leagueId AND NOT EXISTS (SELECT 1 FROM athlete WHERE league_id = league.id)";
  execute(db, sql, { leagueId });
}

export function leagues(db: ReadableDb): { id: number; name: string }[] {
  return allRows(db, "SELECT id, name FROM league ORDER BY folded");
}

/** Adds an athlete; returns a new id, never used before, even by somebody erased. */
export function addAthlete(db: WritableDb, athlete: NewAthlete): number {
  const sql = `INSERT INTO athlete
    (id, league_id, name, folded, number, birth_year, category, guardian_consent, board, share, asked)
    VALUES (1 + max(ifnull((SELECT max(id) FROM athlete), 0), (SELECT id FROM athlete_highest)),
      @leagueId, @name, @folded, @number, @birthYear, @category, @guardianConsent, @board, @share, @asked)`;
  return Number(execute(db, sql, asRow(athlete)).lastInsertRowid);
}

const named = ["leagueId", "name", "folded", "number", "birthYear", "category"] as const;
const said = ["guardianConsent", "board", "share", "asked"] as const;

const addAllSql = `INSERT INTO athlete
  (league_id, name, folded, number, birth_year, category, guardian_consent, board, share, asked, id)
  SELECT ${[...named, ...said].map((_name, at) => `value ->> ${at}`).join(", ")}, @first + key FROM json_each(@rows)`;

/** Ids that were given together: `count` from `first` on. */
export interface NewIds {
  readonly first: number;
  readonly count: number;
}

/** Adds athletes in one statement, as {@link addAthlete} would one after the other; returns their ids, in their order. */
export function addAthletes(db: WritableDb, athletes: readonly NewAthlete[]): NewIds {
  const highest =
    "SELECT max(ifnull((SELECT max(id) FROM athlete), 0), (SELECT id FROM athlete_highest)) AS id";
  const first = 1 + (firstRow<{ id: number }>(db, highest)?.id ?? 0);
  const rows = athletes.map((athlete) => {
    const row = asRow(athlete);
    return [...named, ...said].map((name) => row[name]);
  });
  execute(db, addAllSql, { rows: JSON.stringify(rows), first });
  return { first, count: athletes.length };
}

/** True for an athlete that was deleted: an id is given once, so one that was given and is gone is nobody else's. */
export function wasDeleted(db: ReadableDb, id: number): boolean {
  const sql = `SELECT 1 FROM athlete_highest WHERE id >= @id AND NOT EXISTS (SELECT 1 FROM athlete WHERE id = @id)`;
  return id > 0 && firstRow(db, sql, { id }) !== undefined;
}

/** Replaces all data about an athlete. */
export function updateAthlete(db: WritableDb, id: number, athlete: NewAthlete): void {
  const sql = `UPDATE athlete SET league_id = @leagueId, name = @name, folded = @folded, number = @number,
    birth_year = @birthYear, category = @category, guardian_consent = @guardianConsent, board = @board, share = @share,
    asked = @asked WHERE id = @id`;
  execute(db, sql, { ...asRow(athlete), id });
}

function asRow({ leagueId, name, number, birthYear, category, board, ...said }: NewAthlete) {
  const { guardianConsent, share, asked } = said;
  return {
    ...{ leagueId, name, folded: fold(name), number, birthYear, category, board },
    ...{ guardianConsent: Number(guardianConsent), share: Number(share), asked: Number(asked) },
  };
}
