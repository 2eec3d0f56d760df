import { type Cells, count, RowRefused } from "../domain/tests/cells.ts";
import { sentence } from "../domain/words.ts";
import { line, skaterNumber } from "./cells.ts";
import { gathering } from "./gather.ts";

/** A row's athlete: by bib, or by league with number or name; empty if not given. */
export interface NamedAthlete {
  readonly bib: number | null;
  readonly league: string;
  readonly number: string;
  readonly name: string;
}

/** Reads a row's athlete. @throws RowRefused when it names nobody. */
export function readWho(cells: Cells): NamedAthlete {
  const all = gathering();
  const parts = {
    bib: all.of(() => (cells("bib") === "" ? null : count(cells, "bib", null)), null),
    league: all.of(() => line(cells, "league", 80), ""),
    number: all.of(() => skaterNumber(cells), ""),
    name: all.of(() => line(cells, "name", 80), ""),
  };
  const { bib, league, number, name } = all.done(parts);
  if (bib !== null || (league !== "" && (number !== "" || name !== ""))) return { bib, league, number, name };
  throw new RowRefused(null, sentence("sheets.row.nobody"));
}
