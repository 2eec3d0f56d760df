import { RowRefused } from "../../domain/tests/cells.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ColumnName } from "../../sheets/headers.ts";
import type { RosterRow } from "../../sheets/roster.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import {
  type Athlete,
  addAthletes,
  allAthletes,
  dropEmptyLeague,
  leagueNamed,
  leagues,
  type NewAthlete,
  updateAthlete,
} from "../../store/tables/athletes.ts";
import { entrants, expectEntrant, expectNewEntrants } from "../../store/tables/entrants.ts";
import { requireDay } from "../door/at-hand.ts";
import type { SheetAnswers } from "./choices.ts";
import { leagueReader } from "./leagues.ts";
import {
  type AppliedRow,
  keptBack,
  type Planning,
  type ReadRow,
  type RowByRow,
  type TakenRow,
} from "./outcome.ts";
import { questionId, RowAsked } from "./questions.ts";
import { createRegister, type Register, shownPerson } from "./register.ts";
import { choiceOf, type Meant } from "./who-is-who.ts";

/** An athlete of the store or of an earlier row; `line` is this sheet's row for the same athlete. */
interface Entry {
  league: string;
  name: string;
  number: string;
  birthYear: number | null;
  /** As they stand after the rows so far; null for somebody new of this sheet. */
  athlete: Athlete | null;
  line: number | null;
}

interface Plan {
  readonly register: Register<Entry>;
  readonly leagueOf: ReturnType<typeof leagueReader>;
  readonly answers: SheetAnswers;
  readonly dayId: number;
  readonly listed: ReadonlySet<number>;
  readonly at: string;
  /** League ids by their text in the sheet, filled during the import. */
  readonly leagueIds: Map<string, number>;
  /** Rows of new athletes, filled during the import and written together at its end. */
  readonly added: RosterRow[];
}

/**
 * Plans the import of a roster: new athletes, changed values, and additions to the day's list. Where a row may be about
 * somebody else than whom its number, its name or its league points to, people are asked.
 * @throws Refusal `unavailable` without a day to work on.
 */
export function planRoster(
  db: ReadableDb,
  rows: readonly ReadRow<RosterRow>[],
  { at, answers }: Planning,
): RowByRow {
  const day = requireDay(db);
  const entries = allAthletes(db).map((athlete): Entry => ({ ...shownPerson(athlete), athlete, line: null }));
  const known = leagues(db).map(({ name }) => name);
  const plan: Plan = {
    register: createRegister(entries),
    leagueOf: leagueReader(known, answers, true),
    answers,
    dayId: day.id,
    listed: new Set(entrants(db, day.id).map(({ athleteId }) => athleteId)),
    at,
    leagueIds: new Map(),
    added: [],
  };
  const outcomes = rows.map(({ line, row }) => {
    try {
      return planRow(plan, line, row);
    } catch (error) {
      if (error instanceof RowRefused) return keptBack(line, error);
      throw error;
    }
  });
  return { outcomes, last: (inside) => addRows(inside, plan) };
}

function planRow(plan: Plan, line: number, said: RosterRow): AppliedRow {
  const league = plan.leagueOf(said.league);
  if ("question" in league) throw new RowAsked(league.question);
  const row = { ...said, league: league.name };
  const meant = meantBy(plan, row);
  requireTold(plan, meant?.athlete == null ? row : merged(meant.athlete, row), row, meant);
  const holder = holderOf(plan, row, meant);
  if (meant?.athlete != null)
    return changeOf(plan, line, row, { entry: meant, athlete: meant.athlete, holder });
  plan.register.add({ ...shownPerson(row), athlete: null, line });
  return {
    line,
    status: "new",
    about: null,
    unusual: lossOf(holder),
    was: {},
    joins: true,
    apply: (db) => {
      takeNumber(db, holder);
      plan.added.push(row);
    },
    touches: idsOf(holder),
  };
}

/** Finds who a row means; undefined for somebody new. @throws RowRefused for a row twice, RowAsked to be answered. */
function meantBy({ register, answers }: Plan, row: RosterRow): Entry | undefined {
  const choice = choiceOf(register, row);
  refuseTwice(choice, row);
  if (choice.sure !== undefined) return choice.sure;
  const { candidates, sameName } = choice;
  if (candidates.length === 0 && sameName === undefined) return undefined;
  const asked = {
    about: "person" as const,
    said: shownPerson(row),
    candidates: candidates.map(shownPerson),
    line: sameName?.line ?? null,
  };
  const id = questionId(asked);
  const answer = answers[id];
  if (answer !== undefined && answer !== "new" && candidates[answer] !== undefined) return candidates[answer];
  // Two people of one name in one league are told apart by their numbers alone.
  const mayBeNew = row.number !== "" || !register.byName(row.league, row.name).some(isBare);
  if (answer === "new" && mayBeNew) return undefined;
  const loses = choice.byNumber?.name ?? null;
  throw new RowAsked({ ...asked, id, mayBeNew, takesNew: true, loses });
}

/** @throws RowRefused for a row about somebody whom this sheet has already, or with a number that it gave to another. */
function refuseTwice({ sure, byNumber }: Meant<Entry>, { name, number }: RosterRow): void {
  if (sure !== undefined && sure.line !== null) {
    throw new RowRefused(null, sentence("sheets.row.twice", { name: sure.name, line: sure.line }));
  }
  if (byNumber === undefined || byNumber.line === null || byNumber === sure) return;
  const values = { name, number, other: byNumber.name, line: byNumber.line };
  throw new RowRefused("number", sentence("sheets.row.numberTwice", values));
}

/** @throws RowRefused for a name without a number, or a number brought along, that somebody else of the league has. */
function requireTold(
  { register }: Plan,
  { name, number, league }: Pick<RosterRow, "name" | "number" | "league">,
  row: RosterRow,
  meant: Entry | undefined,
): void {
  const isOther = (each: Entry | undefined) => each !== undefined && each !== meant;
  const taken =
    number === ""
      ? register.byName(league, name).some((each) => isBare(each) && isOther(each))
      : row.number === "" && isOther(register.byNumber(league, number));
  if (taken) throw new RowRefused("number", sentence("sheets.row.tellApart", { name, league }));
}

/** Who has the number of a row that means somebody else, and loses it. @throws RowRefused where that can't be. */
function holderOf({ register }: Plan, { league, number }: RosterRow, meant: Entry | undefined) {
  const found = number === "" ? undefined : register.byNumber(league, number);
  if (found?.athlete == null || found === meant) return undefined;
  const { name, athlete } = found;
  if (register.byName(league, name).some((each) => isBare(each) && each !== found)) {
    throw new RowRefused("number", sentence("sheets.row.cannotLose", { name, number }));
  }
  found.number = "";
  found.athlete = { ...athlete, number: "" };
  register.add(found);
  return { number, athlete: found.athlete };
}

type Holder = ReturnType<typeof holderOf>;

const isBare = ({ number }: Entry) => number === "";

function lossOf(holder: Holder): Sentence | null {
  if (holder === undefined) return null;
  const { number, athlete } = holder;
  return sentence("sheets.row.losesNumber", { number, name: athlete.name });
}

const idsOf = (holder: Holder) => (holder === undefined ? [] : [holder.athlete.id]);

/** Takes a number from whoever had it; their results stay theirs. */
function takeNumber(db: WritableDb, holder: Holder): void {
  if (holder !== undefined) updateAthlete(db, holder.athlete.id, holder.athlete);
}

function leagueIdOf(db: WritableDb, plan: Plan, league: string): number {
  const known = plan.leagueIds.get(league);
  if (known !== undefined) return known;
  const leagueId = leagueNamed(db, league);
  plan.leagueIds.set(league, leagueId);
  return leagueId;
}

/** Adds all new athletes, and to the day's list. Last of all: whose number and whose league they take is settled then. */
function addRows(db: WritableDb, plan: Plan): void {
  const { added, dayId, at, leagueIds } = plan;
  // A league that changes left empty is gone.
  leagueIds.clear();
  const athletes = added.map((row): NewAthlete => {
    const { league, name, number, birthYear, category } = row;
    return {
      ...{ leagueId: leagueIdOf(db, plan, league), name, number, birthYear, category },
      guardianConsent: row.guardianConsent ?? false,
      board: row.board ?? "bib",
      share: row.share ?? false,
      asked: false,
    };
  });
  expectNewEntrants(db, dayId, addAthletes(db, athletes), at);
}

interface Changing {
  readonly entry: Entry;
  readonly athlete: Athlete;
  readonly holder: Holder;
}

function changeOf(plan: Plan, line: number, row: RosterRow, changing: Changing): AppliedRow {
  const { entry, athlete, holder } = changing;
  const after = merged(athlete, row);
  // From now on they are found by what this row says.
  Object.assign(entry, shownPerson(after), { athlete: after, line });
  plan.register.add(entry);
  const was = differences(athlete, after);
  const isChanged = Object.keys(was).length > 0;
  const joins = !plan.listed.has(athlete.id);
  function apply(db: WritableDb): void {
    takeNumber(db, holder);
    if (isChanged) {
      const leagueId =
        athlete.league === after.league ? athlete.leagueId : leagueIdOf(db, plan, after.league);
      updateAthlete(db, athlete.id, { ...after, leagueId });
      if (leagueId !== athlete.leagueId) dropEmptyLeague(db, athlete.leagueId);
    }
    if (joins) expectEntrant(db, plan.dayId, athlete.id, plan.at);
  }
  const status = isChanged ? "changed" : "known";
  const unusual = lossOf(holder);
  const isApplied = isChanged || joins;
  const touches = [athlete.id, ...idsOf(holder)];
  return { line, status, about: null, unusual, was, joins, apply: isApplied ? apply : null, touches };
}

/** Merges the filled cells of a row into an athlete; no sheet changes an athlete's answers at the table. */
function merged(athlete: Athlete, row: RosterRow): Athlete {
  const told = athlete.asked ? { guardianConsent: null, board: null, share: null } : row;
  return {
    ...athlete,
    league: row.league,
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
  ["league", "league"],
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
