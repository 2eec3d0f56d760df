import { type Cells, count, RowRefused } from "../domain/tests/cells.ts";
import { sentence } from "../domain/words.ts";
import { line, skaterNumber } from "./cells.ts";

/** A row's athlete: by bib, or by league with number or name; empty if not given. */
export interface NamedAthlete {
  readonly bib: number | null;
  readonly league: string;
  readonly number: string;
  readonly name: string;
}

/** Reads a row's athlete. @throws RowRefused when it names nobody. */
export function readWho(cells: Cells): NamedAthlete {
  const bib = cells("bib") === "" ? null : count(cells, "bib", null);
  const league = line(cells, "league", 80);
  const number = skaterNumber(cells);
  const name = line(cells, "name", 80);
  if (bib !== null || (league !== "" && (number !== "" || name !== ""))) return { bib, league, number, name };
  throw new RowRefused(null, sentence("sheets.row.nobody"));
}
