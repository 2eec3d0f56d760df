import { fold } from "../../domain/people/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { NamedAthlete } from "../../sheets/who.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { entrants } from "../../store/tables/entrants.ts";
import type { Study } from "../../store/tables/studies.ts";
import { athleteOfRow, type Bibs } from "../intake/by-bib.ts";
import { createRegister, type Finder, finderIn } from "../intake/register.ts";

/** Who may be meant by the readings of a study. */
export interface StudyPeople extends Bibs {
  readonly find: Finder;
  /** The league of all people, where there is but one; else null. */
  readonly onlyLeague: string | null;
  readonly unknownBib: (bib: number) => Sentence;
}

/** Reads everybody once, and the bibs of the study's day. */
export function peopleOf(db: ReadableDb, { dayId }: Study): StudyPeople {
  const people = allAthletes(db);
  const here = dayId === null ? [] : entrants(db, dayId);
  const [first, ...more] = new Set(people.map(({ league }) => league));
  return {
    athletes: new Map(people.map((athlete) => [athlete.id, athlete])),
    bibs: new Map(here.flatMap(({ bib, athleteId }) => (bib === null ? [] : [[bib, athleteId]]))),
    find: finderIn(createRegister(people), {}),
    onlyLeague: more.length === 0 ? (first ?? null) : null,
    unknownBib: (bib) =>
      dayId === null ? sentence("study.noBibs", { bib }) : sentence("study.unknownBib", { bib }),
  };
}

/** Finds a row's athlete. @throws RowRefused */
export function athleteOf(people: StudyPeople, who: NamedAthlete): Athlete {
  return athleteOfRow(people, people.find, who, people.unknownBib);
}

/**
 * Finds whom a typed bib, number or derby name means: digits are a bib where the study has a day.
 * @throws Refusal `not-found` for nobody, `bad-input` for several
 */
export function athleteTyped(people: StudyPeople, typed: string): Athlete {
  const text = typed.trim();
  if (text === "") throw new Refusal("bad-input", sentence("study.who"));
  const digits = /^\d{1,5}$/.test(text);
  if (digits && people.bibs.size > 0) {
    return athleteOf(people, { bib: Number(text), league: "", number: "", name: "" });
  }
  const [first, ...more] = [...people.athletes.values()].filter(({ name, number }) =>
    digits ? number === text : fold(name) === fold(text),
  );
  if (first === undefined) throw new Refusal("not-found", sentence("study.nobody", { typed: text }));
  if (more.length > 0) throw new Refusal("bad-input", sentence("study.several", { typed: text }));
  return first;
}
