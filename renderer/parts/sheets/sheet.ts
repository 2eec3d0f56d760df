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
