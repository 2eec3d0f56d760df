import { fold } from "../../domain/people/fold.ts";
import { RowRefused } from "../../domain/tests/cells.ts";
import { sentence } from "../../domain/words.ts";
import type { NamedAthlete } from "../../sheets/who.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { nearest } from "./nearest.ts";

/** A person to be found by league and number or name. */
export interface RegisteredPerson {
  readonly league: string;
  readonly name: string;
  readonly number: string;
}

/** All people of a store, looked up in memory instead of by one query per row. */
export interface Register<P extends RegisteredPerson> {
  add(person: P): void;
  byNumber(league: string, number: string): P | undefined;
  byName(league: string, name: string): readonly P[];
  leagues(): readonly string[];
  numbers(league: string): readonly string[];
  names(league: string): readonly string[];
}

interface League<P> {
  readonly name: string;
  readonly numbers: Map<string, P>;
  readonly names: Map<string, P[]>;
}

export function createRegister<P extends RegisteredPerson>(people: Iterable<P>): Register<P> {
  const leagues = new Map<string, League<P>>();
  // A sheet repeats its few leagues on every row.
  const folded = new Map<string, string>();

  function find(name: string): League<P> | undefined {
    let key = folded.get(name);
    if (key === undefined) {
      key = fold(name);
      folded.set(name, key);
    }
    return leagues.get(key);
  }

  function add(person: P): void {
    let league = find(person.league);
    if (league === undefined) {
      league = { name: person.league, numbers: new Map(), names: new Map() };
      leagues.set(fold(person.league), league);
    }
    if (person.number !== "") league.numbers.set(person.number, person);
    const name = fold(person.name);
    const same = league.names.get(name);
    if (same === undefined) league.names.set(name, [person]);
    else if (!same.includes(person)) same.push(person);
  }

  for (const person of people) add(person);
  return {
    add,
    byNumber: (league, number) => find(league)?.numbers.get(number),
    byName: (league, name) => find(league)?.names.get(fold(name)) ?? [],
    leagues: () => [...leagues.values()].map(({ name }) => name),
    numbers: (league) => [...(find(league)?.numbers.keys() ?? [])],
    names: (league) => [...(find(league)?.names.values() ?? [])].flatMap(([first]) => first?.name ?? []),
  };
}

export function registerOf(db: ReadableDb): Register<Athlete> {
  return createRegister(allAthletes(db));
}

/** Finds the athlete that a row names by league and number or name. @throws RowRefused with the nearest, if unknown. */
export function athleteNamed(register: Register<Athlete>, who: NamedAthlete): Athlete {
  if (who.number !== "") return register.byNumber(who.league, who.number) ?? refuseUnknown(register, who);
  const [found, second] = register.byName(who.league, who.name);
  if (second !== undefined) throw new RowRefused("name", sentence("sheets.row.sameName", { name: who.name }));
  return found ?? refuseUnknown(register, who);
}

function refuseUnknown(register: Register<Athlete>, { league, number, name }: NamedAthlete): never {
  const leagues = register.leagues();
  if (register.names(league).length === 0) {
    const near = nearest(league, leagues);
    if (near === undefined) throw new RowRefused("league", sentence("sheets.row.unknownLeague", { league }));
    throw new RowRefused("league", sentence("sheets.row.nearLeague", { league, near }));
  }
  const [sameName] = name === "" ? [] : register.byName(league, name);
  const near = sameName?.number ?? nearNumber(number, register.numbers(league));
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
