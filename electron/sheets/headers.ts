import { Refusal } from "../domain/refusal.ts";
import { sheetColumns } from "../domain/tests/sheet-columns.ts";
import { sentence } from "../domain/words.ts";
import { wordsOf } from "./header-words.ts";
import { plainHeader } from "./plain.ts";
import { guessWide, type WidePart, widePartsOf } from "./wide.ts";

/** The sheets that can be imported. */
export const sheetKinds = ["roster", "results", "past"] as const;
export type SheetKindName = (typeof sheetKinds)[number];

/** The tests' columns of a results sheet, those that say how a test was done first. */
const ofTests = sheetColumns().flatMap(({ name, kind }) => (kind === "written" ? [] : [name]));

/** Earlier versions' names of columns, by their present names: sheets of those versions are still read. */
const former: ReadonlyMap<ColumnName, string> = new Map([
  ["screen", "board"],
  ...sheetColumns().flatMap(({ name, formerly }) =>
    formerly === undefined ? [] : [[name, formerly] as const],
  ),
]);

/** A column's name; those of results are the tests' own among them. */
export type ColumnName = string;

/** The columns of each sheet, named as in FORMATS. */
export const columnsOf: Readonly<Record<SheetKindName, readonly ColumnName[]>> = {
  roster: ["league", "name", "number", "birth_year", "category", "guardian_consent", "screen", "share"],
  results: [
    "bib",
    "league",
    "number",
    "name",
    "test",
    "variant",
    ...ofTests,
    "done_at",
    "entered_by",
    "note",
  ],
  past: ["league", "number", "name", "date", "test", "variant", "mark", "unit"],
};

/** The columns added to a sheet of rows not imported; a corrected one comes back with them. */
const added = ["line", "reason"];

/** The header of each field, where the header itself does not say so. */
export type Mapping = Readonly<Record<string, string>>;

/** Values given for all rows of a sheet, by field: their league, the date of their test. */
export type Given = Readonly<Record<string, string>>;

export interface MatchedHeaders {
  /** The column (from 0) of each field that the sheet has. */
  readonly columns: ReadonlyMap<ColumnName, number>;
  /** Of a sheet with a column a test what each row holds; empty for a sheet with a row a test. */
  readonly parts: readonly WidePart[];
  /** Headers that say nothing to this program; their columns are passed over. */
  readonly unknown: readonly string[];
  /** Required fields that the sheet lacks; without them no row is imported. */
  readonly missing: readonly ColumnName[];
}

/** Finds a sheet's columns. @throws Refusal `bad-input` when two match a field and the mapping does not decide. */
export function matchHeaders(
  kind: SheetKindName,
  headers: readonly string[],
  mapping: Mapping = {},
  given: Given = {},
): MatchedHeaders {
  const wide = widePartsOf(kind, headers);
  const taken = wide.flatMap((part) => [...part.columns.values()]);
  const words = headers.map(plainWord);
  const headed = (field: ColumnName) => columnHeaded(kind, { headers, words }, field, mapping);
  const { columns, unknown } = matchFields(columnsOf[kind], headers, mapping, { headed, taken });
  // Where a column says the test, the sheet has a row a test.
  const parts = columns.has("test") || columns.has("mark") ? [] : wide;
  return { columns, parts, unknown, missing: missingFields(kind, { columns, given, parts }) };
}

/** Where fields are found that no mapping names. */
interface Headed {
  /** Returns the column (from 0) whose header says that field; -1 when none does. */
  readonly headed: (field: ColumnName) => number;
  /** Columns that say something else. */
  readonly taken?: readonly number[];
}

/** Finds the column of each field, where the mapping says or else its header does, and the headers that say nothing. */
export function matchFields(
  fields: readonly ColumnName[],
  headers: readonly string[],
  mapping: Mapping,
  { headed, taken = [] }: Headed,
): Pick<MatchedHeaders, "columns" | "unknown"> {
  const columns = new Map<ColumnName, number>();
  const used = new Set(taken);
  for (const field of fields) {
    const mapped = headers.indexOf(mapping[field] ?? "\n");
    const column = mapped >= 0 ? mapped : headed(field);
    if (column < 0 || (mapped < 0 && used.has(column))) continue;
    columns.set(field, column);
    used.add(column);
  }
  const unknown = headers.filter(
    (header, index) => header !== "" && !used.has(index) && !isAddedHeader(header),
  );
  return { columns, unknown };
}

/** Characters of the longest header that is compared: a file of one giant line costs no more than another. */
export const longestHeader = 200;

function plainWord(header: string): string {
  return header.length > longestHeader ? "" : plainHeader(header);
}

/** The column that is headed with the best word for a field; -1 when none is. */
function columnHeaded(
  kind: SheetKindName,
  { headers, words }: Readonly<Record<"headers" | "words", readonly string[]>>,
  field: ColumnName,
  mapping: Mapping,
): number {
  for (const word of headingsOf(kind, field)) {
    const [column, second] = words.flatMap((each, index) => (each === word ? [index] : []));
    if (column === undefined || isMappedElsewhere(headers[column], mapping)) continue;
    const before = second ?? (former.has(field) ? words.indexOf(formerWord(field)) : -1);
    if (before >= 0 && before !== column) throw twice(headers[column] ?? "", headers[before] ?? "");
    return column;
  }
  return -1;
}

/** Returns true if a header names its column, in that kind of sheet. */
export function isKnownHeader(kind: SheetKindName, header: string): boolean {
  const word = plainWord(header);
  return columnsOf[kind].some((field) => headingsOf(kind, field).includes(word));
}

/** The plain words that may head a column: what people write, the best one first, then what it was called before. */
function headingsOf(kind: SheetKindName, field: ColumnName): readonly string[] {
  return [...wordsOf(kind, field), ...(former.has(field) ? [formerWord(field)] : [])];
}

/** Returns the earlier name of a column of {@link former}, as a plain word. */
function formerWord(field: ColumnName): string {
  return plainHeader(former.get(field) ?? field);
}

/** True for a header that a person said to mean some field. */
export function isMappedElsewhere(header: string | undefined, mapping: Mapping): boolean {
  return Object.values(mapping).some((mapped) => mapped === header);
}

/** True for a header that a sheet of rows not imported adds. */
export function isAddedHeader(header: string): boolean {
  return added.includes(plainWord(header));
}

function twice(first: string, second: string): Refusal {
  return new Refusal("bad-input", sentence("sheets.twice", { first, second }));
}

type Found = Pick<MatchedHeaders, "columns" | "parts"> & { readonly given: Given };

function missingFields(kind: SheetKindName, { columns, given, parts }: Found): ColumnName[] {
  const isWide = parts.length > 0;
  const everyDated = isWide && parts.every(({ date }) => date !== "");
  const has: Readonly<Record<string, boolean>> = { test: isWide, mark: isWide, date: everyDated };
  const lacks = (field: ColumnName) => !columns.has(field) && !given[field] && has[field] !== true;
  switch (kind) {
    case "roster":
      return ["league", "name"].filter(lacks);
    case "results":
      return [...whoMissing(lacks), ...["test"].filter(lacks)];
    case "past": {
      const who: ColumnName[] = lacks("number") && lacks("name") ? ["number"] : [];
      const rest = ["league", "date", "test", "mark"].filter(lacks);
      return [...rest, ...who];
    }
  }
}

/** Returns the field that would say whom a row with bibs is about, where nothing does. */
export function whoMissing(lacks: (field: ColumnName) => boolean): ColumnName[] {
  const named = !lacks("bib") || (!lacks("league") && !(lacks("number") && lacks("name")));
  if (named) return [];
  return [lacks("league") ? "bib" : "number"];
}

/** Guesses a sheet's kind by its headers: marks with dates are past results, tests without are results. */
export function guessKind(headers: readonly string[]): SheetKindName {
  const has = (field: ColumnName) =>
    headers.some((header) =>
      wordsOf(field === "bib" ? "results" : "past", field).includes(plainHeader(header)),
    );
  const wide = has("test") ? null : guessWide(headers, has("bib"));
  if (wide !== null) return wide;
  if (has("test") || has("mark")) return has("mark") || has("date") ? "past" : "results";
  return "roster";
}
