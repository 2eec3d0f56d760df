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
import { plainHeader } from "./plain.ts";
import { type NamedAthlete, readWho } from "./who.ts";

/** One attempt as written on paper. */
export interface ResultRow {
  readonly who: NamedAthlete;
  readonly test: TestCode;
  readonly variant: string;
  /** Parsed by the test's own schema, so that its keys are always in the same order. */
  readonly seen: unknown;
  readonly enteredBy: string;
  readonly note: string;
}

/** How people write the ways of doing a test, beside the codes. */
const variantWords: Readonly<Record<string, string>> = {
  knees: "knee",
  rodillas: "knee",
  rodilla: "knee",
  toes: "full",
  completa: "full",
  completas: "full",
  completo: "full",
};

/** Who keyed a row that does not say. */
const nobodyNamed = "sheet";

/** Reads one row of results without knowing who is here. @throws RowRefused */
export function readResultRow(cells: Cells): ResultRow {
  const who = readWho(cells);
  const test = testNamed(cells);
  const variant = variantOf(cells, test);
  const seen = parseAttempt(test, definitionOf(test).sheet.read(cells));
  if (!seen.success) throw new RowRefused(null, refusalOf(seen.error));
  const enteredBy = line(cells, "entered_by", 40) || nobodyNamed;
  return { who, test, variant, seen: seen.data, enteredBy, note: line(cells, "note", 500) };
}

/** Returns a test's variant; an empty cell means the first, which is the full one. @throws RowRefused */
export function variantOf(cells: Cells, test: TestCode): string {
  const { variants } = protocolOf(test);
  const word = plainHeader(cells("variant"));
  const text = variantWords[word] ?? word;
  const [first = ""] = variants;
  if (text === "" || (text === "full" && first === "")) return first;
  const found = variants.find((variant) => variant === text);
  if (found !== undefined) return found;
  const isOnlyOne = variants.length === 1;
  throw new RowRefused(
    "variant",
    isOnlyOne ? sentence("sheets.row.noVariant") : sentence("sheets.row.variant"),
  );
}
