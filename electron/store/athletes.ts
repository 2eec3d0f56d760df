import { fold } from "../domain/people/fold.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

export type Category = "women" | "men" | "open";
/** How the hall's board may show an athlete. */
export type BoardConsent = "name" | "bib" | "hidden";

export interface Athlete {
  readonly id: number;
  readonly leagueId: number;
  readonly league: string;
  readonly name: string;
  /** 0 to 4 digits, a text: 07 is not 7. */
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

/** Every athlete of the store, by league and name. */
export function allAthletes(db: ReadableDb): Athlete[] {
  const sql = `SELECT ${columns} FROM ${source} ORDER BY league.folded, athlete.folded, athlete.id`;
  return statement<[], AthleteRow>(db, sql).all().map(asAthlete);
}

export function athleteById(db: ReadableDb, id: number): Athlete | undefined {
  const row = statement<[number], AthleteRow>(
    db,
    `SELECT ${columns} FROM ${source} WHERE athlete.id = ?`,
  ).get(id);
  return row === undefined ? undefined : asAthlete(row);
}

/**
 * The athlete that a sheet or a volunteer means: same league and number, or same league and name where the number is
 * empty (FORMATS, roster).
 */
export function athleteByIdentity(
  db: ReadableDb,
  league: string,
  number: string,
  name: string,
): Athlete | undefined {
  const which = number === "" ? "number = '' AND athlete.folded = ?" : "number = ?";
  const sql = `SELECT ${columns} FROM ${source} WHERE league.folded = ? AND ${which}`;
  const row = statement<[string, string], AthleteRow>(db, sql).get(
    fold(league),
    number === "" ? fold(name) : number,
  );
  return row === undefined ? undefined : asAthlete(row);
}

/** The league of that name, made when it is new; returns its id. */
export function leagueNamed(db: WritableDb, name: string): number {
  const found = statement<[string], { id: number }>(db, "SELECT id FROM league WHERE folded = ?").get(
    fold(name),
  );
  if (found !== undefined) return found.id;
  const made = statement<[string, string]>(db, "INSERT INTO league (name, folded) VALUES (?, ?)");
  return Number(made.run(name.trim(), fold(name)).lastInsertRowid);
}

/** Takes a league away in which nobody is any more. */
export function dropEmptyLeague(db: WritableDb, leagueId: number): void {
  const sql =
    "DELETE FROM league WHERE id = ? AND NOT EXISTS (SELECT 1 FROM athlete WHERE league_id = league.id)";
  statement<[number]>(db, sql).run(leagueId);
}

export function leagues(db: ReadableDb): { id: number; name: string }[] {
  return statement<[], { id: number; name: string }>(db, "SELECT id, name FROM league ORDER BY folded").all();
}

/** Adds an athlete; returns the new id, which nobody had before, not even somebody who is gone. */
export function addAthlete(db: WritableDb, athlete: NewAthlete): number {
  const sql = `INSERT INTO athlete
    (id, league_id, name, folded, number, birth_year, category, guardian_consent, board, share, asked)
    VALUES (1 + max(ifnull((SELECT max(id) FROM athlete), 0), (SELECT id FROM athlete_highest)),
      ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;
  return Number(statement<AthleteValues>(db, sql).run(...values(athlete)).lastInsertRowid);
}

/** Replaces everything that is held about an athlete. */
export function updateAthlete(db: WritableDb, id: number, athlete: NewAthlete): void {
  const sql = `UPDATE athlete SET league_id = ?, name = ?, folded = ?, number = ?, birth_year = ?, category = ?,
    guardian_consent = ?, board = ?, share = ?, asked = ? WHERE id = ?`;
  statement<[...AthleteValues, number]>(db, sql).run(...values(athlete), id);
}

type AthleteValues = [
  leagueId: number,
  name: string,
  folded: string,
  number: string,
  birthYear: number | null,
  category: Category | null,
  guardianConsent: number,
  board: BoardConsent,
  share: number,
  asked: number,
];

function values(athlete: NewAthlete): AthleteValues {
  return [
    athlete.leagueId,
    athlete.name,
    fold(athlete.name),
    athlete.number,
    athlete.birthYear,
    athlete.category,
    athlete.guardianConsent ? 1 : 0,
    athlete.board,
    athlete.share ? 1 : 0,
    athlete.asked ? 1 : 0,
  ];
}
