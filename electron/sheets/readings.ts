import { Refusal } from "../domain/refusal.ts";
import type { Cells } from "../domain/tests/cells.ts";
import type { TestCode } from "../domain/tests/registry.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { gathering } from "./gather.ts";
import { wordsOf } from "./header-words.ts";
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
const readingColumns = ["bib", "league", "number", "name", "mark", "unit"] as const;

/** What else may head the column of the readings. */
const readings = ["reading", "readings", "reps", "landings", "time", "lectura", "lecturas", "tiempo"].map(
  plainHeader,
);

/**
 * Finds the columns of a study's sheet (from 0); the readings' may be headed by the test's own name.
 * @throws Refusal `bad-input` where no column says who a row is about, or none has the readings
 */
export function matchReadings(headers: readonly string[], test: TestCode): ReadonlyMap<string, number> {
  const columns = new Map<string, number>();
  for (const field of readingColumns) {
    const known = wordsOf(field === "bib" ? "results" : "past", field);
    const at = headers.findIndex((header) => isHeaded(header, field, known, test));
    if (at >= 0 && ![...columns.values()].includes(at)) columns.set(field, at);
  }
  const isNamed = columns.has("number") || columns.has("name");
  if (!columns.has("bib") && !isNamed) throw new Refusal("bad-input", sentence("sheets.missing.bib"));
  if (!columns.has("mark")) throw new Refusal("bad-input", sentence("sheets.missing.mark"));
  return columns;
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
