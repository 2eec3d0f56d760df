import type { Sentence } from "../../../electron/domain/words.ts";
import type { Answers } from "../../app/answers.ts";
import type { Kind } from "../../parts/sheets/sheet.ts";

type Run = Answers["rehearsal"]["run"];
type Stage = Run extends AsyncIterable<infer Each> ? Each : never;

export type Rehearsed = Extract<Stage, { stage: "done" }>["rehearsed"];
export type RehearsedSheet = Rehearsed["sheets"][number];
type Step = Extract<Stage, { stage: "working" }>["step"];

/** The sheets in the order in which a rehearsal imports them. */
export const slots = ["roster", "past", "results"] as const satisfies readonly Kind[];

/** A sheet in the window; it goes to the desk only when the rehearsal begins. */
export interface ChosenSheet {
  readonly name: string;
  readonly content: Blob;
}

export type ChosenSheets = Readonly<Record<Kind, ChosenSheet | null>>;

/** The state of the rehearsal. */
export type RehearsalState =
  | { readonly at: "choosing" }
  | { readonly at: "bringing" }
  | { readonly at: "working"; readonly step: Step; readonly done: number; readonly total: number }
  | { readonly at: "refused"; readonly sheet: Kind; readonly sentence: Sentence }
  | { readonly at: "done"; readonly rehearsed: Rehearsed };

/** True if a sheet lacks a column: the Sheets screen asks which one it is, here its headers have to say it. */
export function isAboutHeaders({ key }: { readonly key: string }): boolean {
  return key.startsWith("sheets.missing.");
}
