import { mostRosters } from "../../../electron/domain/sheets/limits.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import type { Answers } from "../../app/answers.ts";
import type { Kind, SaidOfAll, SheetForm } from "../../parts/sheets/sheet.ts";

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
  /** What was said of it as a whole. */
  readonly said: SaidOfAll;
}

/** Several rosters, since a day has several leagues; of the others one at most. */
export type ChosenSheets = Readonly<Record<Kind, readonly ChosenSheet[]>>;

/** Most sheets of a kind. */
export const mostOf: Readonly<Record<Kind, number>> = { roster: mostRosters, past: 1, results: 1 };

/** The state of the rehearsal. */
export type RehearsalState =
  | { readonly at: "choosing" }
  | { readonly at: "bringing" }
  | { readonly at: "working"; readonly step: Step; readonly done: number; readonly total: number }
  | {
      readonly at: "refused";
      readonly sheet: Kind;
      readonly sentence: Sentence;
      readonly unread: Unread | null;
    }
  | { readonly at: "done"; readonly rehearsed: Rehearsed };

/** A sheet that could not be used, and how it was read. */
export interface Unread {
  readonly file: string;
  readonly form: SheetForm;
}

/** True if a sheet lacks a column. */
export function isAboutHeaders({ key }: { readonly key: string }): boolean {
  return key.startsWith("sheets.missing.");
}
