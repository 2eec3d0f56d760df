import type { Cells } from "../domain/tests/cells.ts";
import type { TestCode } from "../domain/tests/registry.ts";
import type { Sentence } from "../domain/words.ts";
import { gathering } from "./gather.ts";
import { wordsOf } from "./header-words.ts";
import {
  type Given,
  isMappedElsewhere,
  type Mapping,
  type MatchedHeaders,
  matchFields,
  whoMissing,
} from "./headers.ts";
import { markIn } from "./past.ts";
import { plainHeader } from "./plain.ts";
import { testCalled } from "./test-words.ts";
import { type NamedAthlete, readWho } from "./who.ts";

/** One reading of a study's sheet: who it is about, and the result in grains. */
export interface ReadingRow {
  readonly who: NamedAthlete;
  readonly value: number;
  readonly unusual: Sentence | null;
}

/** The columns of a study's sheet, which holds one test by one judge: a row for each athlete. */
export const readingColumns = ["bib", "league", "number", "name", "mark", "unit"] as const;

/** What else may head the column of the readings. */
const readings = ["reading", "readings", "reps", "landings", "time", "lectura", "lecturas", "tiempo"].map(
  plainHeader,
);

/** Finds the columns of a study's sheet; the readings' may be headed by the test's own name. */
export function matchReadings(
  headers: readonly string[],
  test: TestCode,
  mapping: Mapping = {},
  given: Given = {},
): MatchedHeaders {
  function headed(field: string): number {
    const known = wordsOf(field === "bib" ? "results" : "past", field);
    return headers.findIndex(
      (header) => !isMappedElsewhere(header, mapping) && isHeaded(header, field, known, test),
    );
  }
  const { columns, unknown } = matchFields(readingColumns, headers, mapping, { headed });
  const lacks = (field: string) => !columns.has(field) && !given[field];
  // A league that was said of all rows does not make the number the nearest way to say who.
  const who = whoMissing(lacks).map(() => (columns.has("league") ? "number" : "bib"));
  return { columns, unknown, parts: [], missing: [...who, ...["mark"].filter(lacks)] };
}

function isHeaded(header: string, field: string, known: readonly string[], test: TestCode): boolean {
  const word = plainHeader(header);
  if (known.includes(word)) return true;
  return field === "mark" && (readings.includes(word) || testCalled(header) === test);
}

/** Reads one row of a study's sheet. @throws RowRefused */
export function readReading(cells: Cells, test: TestCode): ReadingRow {
  const all = gathering();
  const who = all.of(() => readWho(cells), null);
  const mark = all.of(() => markIn(cells, test), { value: 0, unusual: null });
  const row = all.done(mark);
  // What is null here was refused, and the row with it.
  return { ...row, who: who as NamedAthlete };
}
