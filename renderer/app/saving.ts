import i18next from "i18next";
import { useState } from "react";
import type {
  FileToSave,
  PageToSave,
  PrintOutcome,
  SaveOutcome,
} from "../../electron/shell/bridge/bridge-types.ts";
import { bridge } from "./bridge.ts";
import { tell } from "./messages.ts";
import { sentenceOf } from "./trouble.ts";

/** The papers that pages are laid out for, but for cards. */
export const papers = ["a4", "letter"] as const;
export type Paper = (typeof papers)[number];

/** Returns the paper that an address names; undefined for one that names none. */
export function paperNamed(name: string): Paper | undefined {
  return papers.find((each) => each === name);
}

/** Screens whose word file may have its own sentences under `saving`; the others use common.json. */
export type PaperScreen =
  | "bundle"
  | "cards"
  | "devices"
  | "held"
  | "instructions"
  | "papers"
  | "plan"
  | "report"
  | "sheets"
  | "study"
  | "summary";

/**
 * Reports the outcome of saving or printing in the message strip. `undefined`: this window has no shell for it.
 * `values` go into the screen's own sentences, besides the file's name.
 */
export function tellOutcome(
  screen: PaperScreen,
  outcome: SaveOutcome | PrintOutcome | undefined,
  values: Readonly<Record<string, string | number>> = {},
): void {
  const came = keyOf(outcome);
  const all = outcome !== undefined && "name" in outcome ? { ...values, name: outcome.name } : values;
  const own = `${screen}:saving.${came}`;
  const tone = came === "saved" || came === "printed" ? "done" : isCancelled(outcome) ? "note" : "alert";
  tell({ tone, sentence: { key: i18next.exists(own, all) ? own : `common:saving.${came}`, values: all } });
}

function isCancelled(outcome: SaveOutcome | PrintOutcome | undefined): boolean {
  return outcome !== undefined && "why" in outcome && outcome.why === "cancelled";
}

function keyOf(outcome: SaveOutcome | PrintOutcome | undefined): string {
  if (outcome === undefined) return "noBridge";
  if ("saved" in outcome) return outcome.saved ? "saved" : outcome.why;
  if (outcome.printed) return "printed";
  return outcome.why === "cancelled" ? "notPrinted" : "unprintable";
}

/** Reports an error of the API in the message strip. */
function tellTrouble(error: unknown): void {
  tell({ tone: "alert", sentence: sentenceOf(error) });
}

/** Saves a file made by the desk where the person chooses, and reports the outcome. */
export async function saveMade(screen: PaperScreen, make: () => Promise<FileToSave>): Promise<void> {
  if (bridge === null) return tellOutcome(screen, undefined);
  await make()
    .then(bridge.saveFile)
    .then((outcome) => tellOutcome(screen, outcome), tellTrouble);
}

/** Returns a text as a file to save. */
export function textFile({ name, text }: { readonly name: string; readonly text: string }): FileToSave {
  return { suggestedName: name, bytes: new TextEncoder().encode(text) };
}

/** Decodes a file's bytes from base64. */
export function bytesOf(base64: string): Uint8Array {
  return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
}

/** Prints a page or saves it as a PDF; `busy` is true meanwhile. */
export function usePaperwork(screen: PaperScreen, page: PageToSave) {
  const [busy, setBusy] = useState(false);
  function run(work: () => Promise<void>): void {
    setBusy(true);
    void work()
      .catch(tellTrouble)
      .finally(() => setBusy(false));
  }
  const { path, paper } = page;
  return {
    busy,
    print: () => run(async () => tellOutcome(screen, await bridge?.print({ path, paper }))),
    save: () => run(async () => tellOutcome(screen, await bridge?.savePdf(page))),
  };
}
