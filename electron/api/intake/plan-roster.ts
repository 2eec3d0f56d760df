import { sentence } from "../../domain/words.ts";
import type { ColumnName } from "../../sheets/headers.ts";
import type { RosterRow } from "../../sheets/roster.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import {
  type Athlete,
  addAthlete,
  allAthletes,
  leagueNamed,
  updateAthlete,
} from "../../store/tables/athletes.ts";
import { entrants, expectEntrant } from "../../store/tables/entrants.ts";
import { requireDay } from "../door/at-hand.ts";
import type { KeptBackRow, ReadRow, RowOutcome, TakenRow } from "./outcome.ts";
import { createRegister, type Register } from "./register.ts";

/** An athlete of the store or of an earlier row; `line` is this sheet's row for the same athlete. */
interface Entry {
  readonly league: string;
  readonly name: string;
  number: string;
  readonly athlete: Athlete | null;
  line: number | null;
}

interface Plan {
  readonly register: Register<Entry>;
  readonly dayId: number;
  readonly listed: ReadonlySet<number>;
  readonly at: string;
  /** League ids by their text in the sheet, filled during the import. */
  readonly leagueIds: Map<string, number>;
}

/**
 * Plans the import of a roster: new athletes, changed values, and additions to the day's list.
 * @throws Refusal `unavailable` without a day to work on.
 */
export function planRoster(db: ReadableDb, rows: readonly ReadRow<RosterRow>[], at: string): RowOutcome[] {
  const day = requireDay(db);
  const entries = allAthletes(db).map(
    (athlete): Entry => ({
      league: athlete.league,
      name: athlete.name,
      number: athlete.number,
      athlete,
      line: null,
    }),
  );
  const plan: Plan = {
    register: createRegister(entries),
    dayId: day.id,
    listed: new Set(entrants(db, day.id).map(({ athleteId }) => athleteId)),
    at,
    leagueIds: new Map(),
  };
  return rows.map(({ line, row }) => planRow(plan, line, row));
}

function planRow(plan: Plan, line: number, row: RosterRow): RowOutcome {
  const found = entryOf(plan.register, row);
  if (found === "several") {
    return refused(line, "number", sentence("sheets.row.sameName", { name: row.name }));
  }
  if (found !== undefined && found.line !== null) {
    return refused(line, null, sentence("sheets.row.twice", { name: found.name, line: found.line }));
  }
  if (found?.athlete) return changeOf(plan, line, row, found, found.athlete);
  plan.register.add({ league: row.league, name: row.name, number: row.number, athlete: null, line });
  return {
    line,
    status: "new",
    about: null,
    unusual: null,
    was: {},
    joins: true,
    apply: (db) => addRow(db, plan, row),
  };
}

function refused(line: number, field: ColumnName | null, reason: KeptBackRow["reason"]): KeptBackRow {
  return { line, field, reason };
}

/** Finds the entry with the same league and number, or league and name where sheet or store lacks a number. */
function entryOf(register: Register<Entry>, row: RosterRow): Entry | "several" | undefined {
  if (row.number !== "") {
    const found = register.byNumber(row.league, row.number);
    return found ?? register.byName(row.league, row.name).find(({ number }) => number === "");
  }
  const named = register.byName(row.league, row.name);
  const bare = named.find(({ number }) => number === "");
  if (bare !== undefined || named.length < 2) return bare ?? named[0];
  return "several";
}

function addRow(db: WritableDb, plan: Plan, row: RosterRow): void {
  let leagueId = plan.leagueIds.get(row.league);
  if (leagueId === undefined) {
    leagueId = leagueNamed(db, row.league);
    plan.leagueIds.set(row.league, leagueId);
  }
  const id = addAthlete(db, {
    leagueId,
    name: row.name,
    number: row.number,
    birthYear: row.birthYear,
    category: row.category,
    guardianConsent: row.guardianConsent ?? false,
    board: row.board ?? "bib",
    share: row.share ?? false,
    asked: false,
  });
  expectEntrant(db, plan.dayId, id, plan.at);
}

function changeOf(plan: Plan, line: number, row: RosterRow, entry: Entry, athlete: Athlete): TakenRow {
  entry.line = line;
  const after = merged(athlete, row);
  // A number filled in by this row identifies the athlete from now on.
  if (after.number !== athlete.number) {
    entry.number = after.number;
    plan.register.add(entry);
  }
  const was = differences(athlete, after);
  const isChanged = Object.keys(was).length > 0;
  const joins = !plan.listed.has(athlete.id);
  function apply(db: WritableDb): void {
    if (isChanged) updateAthlete(db, athlete.id, after);
    if (joins) expectEntrant(db, plan.dayId, athlete.id, plan.at);
  }
  const status = isChanged ? "changed" : "known";
  return { line, status, about: null, unusual: null, was, joins, apply: isChanged || joins ? apply : null };
}

/** Merges the filled cells of a row into an athlete; no sheet changes an athlete's answers at the table. */
function merged(athlete: Athlete, row: RosterRow): Athlete {
  const told = athlete.asked ? { guardianConsent: null, board: null, share: null } : row;
  return {
    ...athlete,
    name: row.name,
    number: row.number === "" ? athlete.number : row.number,
    birthYear: row.birthYear ?? athlete.birthYear,
    category: row.category ?? athlete.category,
    guardianConsent: told.guardianConsent ?? athlete.guardianConsent,
    board: told.board ?? athlete.board,
    share: told.share ?? athlete.share,
  };
}

const compared = [
  ["name", "name"],
  ["number", "number"],
  ["birth_year", "birthYear"],
  ["category", "category"],
  ["guardian_consent", "guardianConsent"],
  ["screen", "board"],
  ["share", "share"],
] as const satisfies readonly (readonly [ColumnName, keyof Athlete])[];

function differences(before: Athlete, after: Athlete): TakenRow["was"] {
  const was: Partial<Record<ColumnName, string>> = {};
  for (const [field, key] of compared) if (before[key] !== after[key]) was[field] = written(before[key]);
  return was;
}

/** Formats a value as in a sheet. */
function written(value: Athlete[keyof Athlete]): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  return value === null ? "" : String(value);
}
