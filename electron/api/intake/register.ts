import { fold } from "../../domain/people/fold.ts";
import { RowRefused } from "../../domain/tests/cells.ts";
import { sentence } from "../../domain/words.ts";
import type { NamedAthlete } from "../../sheets/who.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import type { SaidPerson } from "../door/shapes.ts";
import type { SheetAnswers } from "./choices.ts";
import { leagueReader } from "./leagues.ts";
import { nearest } from "./nearest.ts";
import { questionId, RowAsked } from "./questions.ts";

/** A person to be found by league and number or name. */
export interface RegisteredPerson {
  readonly league: string;
  readonly name: string;
  readonly number: string;
  readonly birthYear: number | null;
}

/**
 * All people of a store, looked up in memory instead of by one query per row. Who is changed is added again, and is no
 * longer found by what they were.
 */
export interface Register<P extends RegisteredPerson> {
  add(person: P): void;
  byNumber(league: string, number: string): P | undefined;
  /** Those of that name, the ones without a number first. */
  byName(league: string, name: string): readonly P[];
  /** Those of that name in other leagues. */
  elsewhere(league: string, name: string): readonly P[];
  leagues(): readonly string[];
  numbers(league: string): readonly string[];
  names(league: string): readonly string[];
}

interface League<P> {
  readonly name: string;
  readonly numbers: Map<string, P>;
}

/** Most people of one name that are looked at. */
const mostAlike = 20;

export function createRegister<P extends RegisteredPerson>(people: Iterable<P>): Register<P> {
  const leagues = new Map<string, League<P>>();
  const byNames = new Map<string, P[]>();
  const folded = foldedOnce();

  function add(person: P): void {
    const key = folded(person.league);
    let league = leagues.get(key);
    if (league === undefined) {
      league = { name: person.league, numbers: new Map() };
      leagues.set(key, league);
    }
    if (person.number !== "") league.numbers.set(person.number, person);
    const name = folded(person.name);
    const same = byNames.get(name) ?? [];
    byNames.set(name, same);
    if (same.includes(person)) return;
    if (person.number === "") same.unshift(person);
    else same.push(person);
  }

  function named(name: string, isMeant: (person: P) => boolean): P[] {
    const found: P[] = [];
    const key = folded(name);
    for (const person of byNames.get(key) ?? []) {
      if (folded(person.name) === key && isMeant(person)) found.push(person);
      if (found.length === mostAlike) break;
    }
    return found.sort((a, b) => Number(a.number !== "") - Number(b.number !== ""));
  }

  const isOf = (league: string) => (person: P) => folded(person.league) === folded(league);
  for (const person of people) add(person);
  return {
    add,
    byNumber(league, number) {
      const found = leagues.get(folded(league))?.numbers.get(number);
      return found?.number === number && isOf(league)(found) ? found : undefined;
    },
    byName: (league, name) => named(name, isOf(league)),
    elsewhere: (league, name) => named(name, (person) => !isOf(league)(person)),
    leagues: () => [...leagues.values()].map(({ name }) => name),
    numbers: (league) => [...(leagues.get(folded(league))?.numbers.keys() ?? [])],
    names: (league) => [...byNames.values()].flatMap((same) => same.find(isOf(league))?.name ?? []),
  };
}

/** A sheet repeats its few leagues and names on many rows. */
function foldedOnce(): (text: string) => string {
  const known = new Map<string, string>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const now = fold(text);
    known.set(text, now);
    return now;
  };
}

export function registerOf(db: ReadableDb): Register<Athlete> {
  return createRegister(allAthletes(db));
}

/**
 * Finds who a row of results means, and asks where league, number and name don't agree on one person: it throws
 * RowRefused with the nearest if unknown, and RowAsked where people have to say.
 */
export type Finder = (who: NamedAthlete) => Athlete;

/** Makes a finder for one sheet. */
export function finderIn(register: Register<Athlete>, answers: SheetAnswers): Finder {
  const leagueOf = leagueReader(register.leagues(), answers, false);
  return (said) => {
    const league = leagueOf(said.league);
    if ("question" in league) throw new RowAsked(league.question);
    return athleteNamed(register, { ...said, league: league.name }, answers);
  };
}

function athleteNamed(register: Register<Athlete>, who: NamedAthlete, answers: SheetAnswers): Athlete {
  const candidates = candidatesOf(register, who);
  const [first] = candidates;
  if (first === undefined) return refuseUnknown(register, who);
  if (candidates.length === 1 && isSaid(first, who)) return first;
  const { league, number, name } = who;
  const said = { league, number, name, birthYear: null };
  const asked = { about: "person" as const, said, candidates: candidates.map(shownPerson) };
  const id = questionId(asked);
  const answer = answers[id];
  if (answer === undefined) {
    throw new RowAsked({ ...asked, id, mayBeNew: true, takesNew: false, loses: null, line: null });
  }
  const chosen = answer === "new" ? undefined : candidates[answer];
  if (chosen === undefined) throw new RowRefused("name", sentence("sheets.row.somebodyElse"));
  return chosen;
}

/** Whoever has the number, and those with the name: one who has both is meant alone. */
function candidatesOf(register: Register<Athlete>, { league, number, name }: NamedAthlete): Athlete[] {
  const byNumber = number === "" ? undefined : register.byNumber(league, number);
  if (byNumber !== undefined && (name === "" || fold(byNumber.name) === fold(name))) return [byNumber];
  const named = name === "" ? [] : register.byName(league, name);
  return byNumber === undefined ? [...named] : [byNumber, ...named.filter((each) => each !== byNumber)];
}

/** Whether nothing that a row says of somebody is otherwise in the store; what one of them leaves out says nothing. */
function isSaid(athlete: Athlete, { number, name }: NamedAthlete): boolean {
  const isName = name === "" || fold(athlete.name) === fold(name);
  return isName && (number === "" || athlete.number === "" || athlete.number === number);
}

function refuseUnknown(register: Register<Athlete>, { league, number, name }: NamedAthlete): never {
  const leagues = register.leagues();
  if (register.names(league).length === 0) {
    const near = nearest(league, leagues);
    if (near === undefined) throw new RowRefused("league", sentence("sheets.row.unknownLeague", { league }));
    throw new RowRefused("league", sentence("sheets.row.nearLeague", { league, near }));
  }
  const near = nearNumber(number, register.numbers(league));
  if (number !== "" && near !== undefined) {
    throw new RowRefused("number", sentence("sheets.row.nearNumber", { number, league, near }));
  }
  if (number !== "") throw new RowRefused("number", sentence("sheets.row.unknownNumber", { number, league }));
  const nearName = nearest(name, register.names(league));
  if (nearName === undefined)
    throw new RowRefused("name", sentence("sheets.row.unknownName", { name, league }));
  throw new RowRefused("name", sentence("sheets.row.nearName", { name, league, near: nearName }));
}

/** Finds a number despite lost zeros: a spreadsheet drops leading ones, and 7 is often meant as 07. */
function nearNumber(number: string, numbers: readonly string[]): string | undefined {
  return numbers.find((each) => each !== number && Number(each) === Number(number));
}

/** A person as a question shows them. */
export function shownPerson({ name, number, league, birthYear }: RegisteredPerson): SaidPerson {
  return { name, number, league, birthYear };
}
