import { sheetLimits } from "../../../electron/domain/sheets/limits.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import type { Answers } from "../../app/answers.ts";

type Intake = Answers["intake"];
type Stage = Intake["read"] extends AsyncIterable<infer Each> ? Each : never;

export type Preview = Extract<Stage, { stage: "preview" }>["preview"];
export type PreviewRow = Preview["rows"][number];
export type Taken = Intake["take"];
export type KeptBackRow = Taken["keptBack"][number];
export type Counts = Taken["counts"];
export type Kind = Taken["kind"];

/** How a sheet was read, as far as a person can say it otherwise. */
export type SheetForm = Pick<
  Preview,
  | ("kind" | "missing" | "fields" | "headerLine" | "start" | "worksheets" | "worksheet")
  | ("asksDateOrder" | "asked")
>;

/** How a sheet's columns were read. */
export type SheetColumns = Pick<Preview, "missing" | "unknown" | "fields" | "headers">;

/** Field → header, as a person said it. */
export type ColumnMapping = Readonly<Record<string, string>>;

/** What a person says of a whole sheet that the sheet does not say itself. */
export interface SaidOfAll {
  readonly headerLine?: number;
  readonly worksheet?: number;
  readonly league?: string;
  readonly date?: string;
  readonly dateOrder?: "day" | "month";
  /** What blank cells mean, by field. */
  readonly blanks?: Readonly<Record<string, string>>;
}

/** The files that can be read, for the dialog that chooses one. */
export const readable = ".csv,.tsv,.txt,.xlsx,.xlsm,.ods,text/csv,text/tab-separated-values,text/plain";

/** Why a file that the shell could not read is refused. */
export const unreadable: Sentence = { key: "sheets:choose.unreadable" };
export const tooBig: Sentence = {
  key: "sheets.tooBig",
  values: { megabytes: sheetLimits.bytes / 1024 / 1024 },
};

/** Returns why a file is refused unread; null for one that can be sent. An empty body would not reach the desk. */
export function whyUnread({ size }: Blob): Sentence | null {
  if (size === 0) return { key: "sheets.empty" };
  return size > sheetLimits.bytes ? tooBig : null;
}

/** Assigns a column, which serves one field only: the other field that had it loses it. An empty header: none. */
export function mapped(before: ColumnMapping, field: string, header: string): ColumnMapping {
  const others = Object.entries(before).filter(([key, value]) => key !== field && value !== header);
  return Object.fromEntries(header === "" ? others : [...others, [field, header]]);
}

/** Returns true for what makes another sheet of it, whose columns are matched anew: its row of headers, or a worksheet. */
export function isOtherSheet({ headerLine, worksheet }: SaidOfAll): boolean {
  return headerLine !== undefined || worksheet !== undefined;
}

/** The kinds in the day's order. */
export const kinds = ["roster", "results", "past"] as const satisfies readonly Kind[];

/** The state of the current sheet's import. */
export type SheetState =
  | { readonly step: "none" }
  | { readonly step: "bringing" }
  | { readonly step: "reading"; readonly done: number; readonly total: number }
  | { readonly step: "refused"; readonly sentence: Sentence }
  | { readonly step: "preview"; readonly preview: Preview }
  | { readonly step: "taken"; readonly taken: Taken };

/** Returns a sentence from the wire, which has no difference between undefined and missing. */
export function asSentence({
  key,
  values,
}: {
  key: string;
  values?: Sentence["values"] | undefined;
}): Sentence {
  return values === undefined ? { key } : { key, values };
}

/** Counts rows with changes, including those that are only added to the day's list. */
export function changesOf(counts: Counts): number {
  return Math.max(counts.new + counts.changed, counts.joined);
}
