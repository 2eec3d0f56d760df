import { type Sentence, sentence } from "../../domain/words.ts";

/**
 * Why a store is not opened.
 * - newer: made by a newer version of this program.
 * - foreign: another program's file, or none of a database at all.
 * - gone: there was a store here, and the file is missing or empty.
 * - damaged: SQLite's own checks, or marks that do not follow from their attempts, say so.
 * - changed: those find nothing, but it is not the file that this program left: a flipped bit, or another program.
 * - shortened: entries that were saved are not there any more; the log of the last ones is lost or spoilt.
 */
export const refusals = ["newer", "foreign", "gone", "damaged", "changed", "shortened"] as const;
export type RefusedFor = (typeof refusals)[number];

/** The store can't be opened; the file has not been touched. */
export class StoreRefused extends Error {
  readonly reason: RefusedFor;
  readonly sentence: Sentence;
  /** True where the file is not as this program left it, so that the reason itself may be damage. */
  doubted = false;
  constructor(reason: RefusedFor, values?: Sentence["values"], detail = "") {
    super(`store refused: ${reason}${detail === "" ? "" : ` (${detail})`}`);
    this.reason = reason;
    this.sentence = sentence(`store.${reason}`, values);
  }
}

/** Reasons of which a person may say: it is as I want it, open it. The store passed every other check. */
export const acceptable: readonly RefusedFor[] = ["changed", "shortened"];
