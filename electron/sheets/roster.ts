import { type Cells, RowRefused, yesNo } from "../domain/tests/cells.ts";
import { sentence } from "../domain/words.ts";
import type { BoardConsent, Category } from "../store/tables/athletes.ts";
import { line, requiredLine, skaterNumber } from "./cells.ts";
import { gathering } from "./gather.ts";
import { plainHeader } from "./plain.ts";

/** One athlete on a league's roster; null and an empty number: the sheet does not say. */
export interface RosterRow {
  readonly league: string;
  readonly name: string;
  readonly number: string;
  readonly birthYear: number | null;
  readonly category: Category | null;
  readonly guardianConsent: boolean | null;
  readonly board: BoardConsent | null;
  readonly share: boolean | null;
}

const categoryWords: Readonly<Record<Category, readonly string[]>> = {
  women: ["women", "woman", "w", "f", "female", "fem", "mujer", "mujeres", "femenino", "femenina"],
  men: ["men", "man", "m", "male", "masc", "hombre", "hombres", "h", "masculino"],
  open: [
    ...["open", "o", "nb", "enby", "non-binary", "nonbinary", "x", "mixed"],
    ...["abierta", "abierto", "mixta", "mixto", "no binarie", "no binaria", "no binario"],
  ],
};

const categories = new Map(
  Object.entries(categoryWords).flatMap(([category, words]) =>
    words.map((word) => [plainHeader(word), category as Category] as const),
  ),
);

/** The facts about each cell that only the whole column of a roster tells. */
export interface RosterWays {
  /** ISO 8601 day. */
  readonly today: string;
  /** M stands for women: Spanish lists have M and H (mujer, hombre), others F and M. */
  readonly mIsWomen: boolean;
}

/** Returns true if M means women in a column of categories. */
export function mIsWomen(column: Iterable<string>): boolean {
  const words = new Set([...column].map(plainHeader));
  return words.has("h") && !words.has("f") && !words.has("w");
}

const boards: readonly BoardConsent[] = ["name", "bib", "hidden"];

/** Reads one row of a roster. @throws RowRefused */
export function readRosterRow(cells: Cells, ways: RosterWays): RosterRow {
  const all = gathering();
  return all.done({
    league: all.of(() => requiredLine(cells, "league", 80), ""),
    name: all.of(() => requiredLine(cells, "name", 80), ""),
    number: all.of(() => skaterNumber(cells), ""),
    birthYear: all.of(() => birthYear(line(cells, "birth_year", 80), ways.today), null),
    category: all.of(() => category(cells("category"), ways), null),
    guardianConsent: all.of(() => yesNo(cells, "guardian_consent"), null),
    board: all.of(() => board(cells("screen")), null),
    share: all.of(() => yesNo(cells, "share"), null),
  });
}

/** The year alone, or that of a whole date: nothing else of it is kept. */
const yearForm = /^(?:(\d{4})(?:[-/.]\d{1,2}[-/.]\d{1,2})?|\d{1,2}[-/.]\d{1,2}[-/.](\d{4}))$/;

function birthYear(text: string, today: string): number | null {
  if (text === "") return null;
  const found = yearForm.exec(text);
  if (found === null) throw new RowRefused("birth_year", sentence("sheets.row.birthYear"));
  const year = Number(found[1] ?? found[2]);
  const thisYear = Number(today.slice(0, 4));
  if (year >= 1900 && year <= thisYear) return year;
  throw new RowRefused("birth_year", sentence("sheets.row.birthYearRange", { year: thisYear }));
}

function category(text: string, ways: RosterWays): Category | null {
  if (text === "") return null;
  const word = plainHeader(text);
  if (word === "m" && ways.mIsWomen) return "women";
  const found = categories.get(word);
  if (found === undefined) throw new RowRefused("category", sentence("sheets.row.category"));
  return found;
}

function board(text: string): BoardConsent | null {
  if (text === "") return null;
  const found = boards.find((each) => each === text.toLowerCase());
  if (found === undefined) throw new RowRefused("screen", sentence("sheets.row.board"));
  return found;
}
