import { type Cells, RowRefused, yesNo } from "../domain/tests/cells.ts";
import { sentence } from "../domain/words.ts";
import type { BoardConsent, Category } from "../store/tables/athletes.ts";
import { line, requiredLine, skaterNumber } from "./cells.ts";

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

const categories: Readonly<Record<string, Category>> = {
  women: "women",
  woman: "women",
  w: "women",
  men: "men",
  man: "men",
  m: "men",
  open: "open",
  o: "open",
};

const boards: readonly BoardConsent[] = ["name", "bib", "hidden"];

/** Reads one row of a roster; `today` is an ISO 8601 day. @throws RowRefused */
export function readRosterRow(cells: Cells, today: string): RosterRow {
  return {
    league: requiredLine(cells, "league", 80),
    name: requiredLine(cells, "name", 80),
    number: skaterNumber(cells),
    birthYear: birthYear(line(cells, "birth_year", 80), today),
    category: category(cells("category")),
    guardianConsent: yesNo(cells, "guardian_consent"),
    board: board(cells("screen")),
    share: yesNo(cells, "share"),
  };
}

function birthYear(text: string, today: string): number | null {
  if (text === "") return null;
  if (!/^\d{4}$/.test(text)) throw new RowRefused("birth_year", sentence("sheets.row.birthYear"));
  const year = Number(text);
  const thisYear = Number(today.slice(0, 4));
  if (year >= 1900 && year <= thisYear) return year;
  throw new RowRefused("birth_year", sentence("sheets.row.birthYearRange", { year: thisYear }));
}

function category(text: string): Category | null {
  if (text === "") return null;
  const key = text.toLowerCase();
  const found = Object.hasOwn(categories, key) ? categories[key] : undefined;
  if (found === undefined) throw new RowRefused("category", sentence("sheets.row.category"));
  return found;
}

function board(text: string): BoardConsent | null {
  if (text === "") return null;
  const found = boards.find((each) => each === text.toLowerCase());
  if (found === undefined) throw new RowRefused("screen", sentence("sheets.row.board"));
  return found;
}
