import { readClock } from "../domain/day/clock.ts";
import { type Cells, RowRefused } from "../domain/tests/cells.ts";
import {
  definitionOf,
  parseAttempt,
  protocolOf,
  refusalOf,
  type TestCode,
} from "../domain/tests/registry.ts";
import { sentence } from "../domain/words.ts";
import { line, testNamed } from "./cells.ts";
import { gathering } from "./gather.ts";
import { plainHeader } from "./plain.ts";
import { type NamedAthlete, readWho } from "./who.ts";
import { bareField } from "./wide.ts";

/** One attempt as written on paper. */
export interface ResultRow {
  readonly who: NamedAthlete;
  readonly test: TestCode;
  readonly variant: string;
  /** Parsed by the test's own schema, so that its keys are always in the same order. */
  readonly seen: unknown;
  /** The time of day at which it was done, as "09:05"; null where the paper says none. */
  readonly doneAt: string | null;
  readonly enteredBy: string;
  readonly note: string;
}

/** Usual spellings of the variants, beside the codes. */
const variantWords: Readonly<Record<string, string>> = {
  knees: "knee",
  rodillas: "knee",
  rodilla: "knee",
  toes: "full",
  completa: "full",
  completas: "full",
  completo: "full",
};

/** The initials of a row without any. */
const nobodyNamed = "sheet";

/** Reads one row of results without knowing who is here. @throws RowRefused */
export function readResultRow(cells: Cells): ResultRow {
  const all = gathering();
  const who = all.of(() => readWho(cells), null);
  const enteredBy = all.of(() => line(cells, "entered_by", 40), "") || nobodyNamed;
  const note = all.of(() => line(cells, "note", 500), "");
  const doneAt = all.of(() => clockIn(cells), null);
  const test = all.of(() => testNamed(cells), null);
  const variant = test === null ? "" : all.of(() => variantOf(cells, test), "");
  const seen = test === null ? null : all.of(() => seenIn(cells, test), null);
  const row = all.done({ variant, seen, doneAt, enteredBy, note });
  // What is null here was refused, and the row with it.
  return { ...row, who: who as NamedAthlete, test: test as TestCode };
}

/** Returns a time of day; null for an empty cell. @throws RowRefused */
function clockIn(cells: Cells): string | null {
  const text = cells("done_at");
  if (text === "") return null;
  const clock = readClock(text);
  if (clock === null) throw new RowRefused("done_at", sentence("sheets.row.doneAt"));
  return clock;
}

/** A number alone is no attempt of some tests: it says nothing of the reaches, or of the direction. */
function seenIn(cells: Cells, test: TestCode): unknown {
  if (cells(bareField) !== "") throw new RowRefused(bareField, sentence("sheets.row.bare"));
  const seen = parseAttempt(test, definitionOf(test).sheet.read(cells));
  if (!seen.success) throw new RowRefused(null, refusalOf(seen.error));
  return seen.data;
}

/** Returns a test's variant; an empty cell is one only where there is but one. @throws RowRefused */
export function variantOf(cells: Cells, test: TestCode): string {
  const { variants } = protocolOf(test);
  const word = plainHeader(cells("variant"));
  const text = variantWords[word] ?? word;
  const [first = ""] = variants;
  if (text === "" && variants.length > 1)
    throw new RowRefused("variant", sentence("sheets.row.blankVariant"));
  if (text === "" || (text === "full" && first === "")) return first;
  const found = variants.find((variant) => variant === text);
  if (found !== undefined) return found;
  const isOnlyOne = variants.length === 1;
  throw new RowRefused(
    "variant",
    isOnlyOne ? sentence("sheets.row.noVariant") : sentence("sheets.row.variant"),
  );
}
