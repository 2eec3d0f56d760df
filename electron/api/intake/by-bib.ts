import { RowRefused } from "../../domain/tests/cells.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { NamedAthlete } from "../../sheets/who.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import type { Finder } from "./register.ts";

/** Who has which bib on a day; both maps hold ids of athletes. */
export interface Bibs {
  readonly bibs: ReadonlyMap<number, number>;
  readonly athletes: ReadonlyMap<number, Athlete>;
}

/**
 * Finds a row's athlete: by bib if given (the rest must agree), else by league and number or name.
 * @param unknownBib what to say of a bib that nobody has
 * @throws RowRefused
 */
export function athleteOfRow(
  { bibs, athletes }: Bibs,
  find: Finder,
  who: NamedAthlete,
  unknownBib: (bib: number) => Sentence,
): Athlete {
  if (who.bib === null) return find(who);
  const id = bibs.get(who.bib);
  const athlete = id === undefined ? undefined : athletes.get(id);
  if (athlete === undefined) throw new RowRefused("bib", unknownBib(who.bib));
  const isNamed = who.league !== "" && (who.number !== "" || who.name !== "");
  if (isNamed && find(who) !== athlete) {
    const values = { bib: who.bib, name: athlete.name, league: athlete.league };
    throw new RowRefused("bib", sentence("sheets.row.bibOfAnother", values));
  }
  return athlete;
}
