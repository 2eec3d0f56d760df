import { type Sentence, sentence } from "../../domain/words.ts";

/**
 * The reasons for refusing to open a store.
 * - newer: made by a newer version of this program.
 * - foreign: another program's file, or not a database at all.
 * - gone: there was a store here, and the file is missing or empty.
 * - damaged: SQLite's own checks fail, or marks do not follow from their attempts.
 * - changed: those checks pass, but the bytes are not those we left: a flipped bit, or another program's write.
 * - shortened: saved entries are missing; the log with the last ones is lost or damaged.
 */
export const refusals = ["newer", "foreign", "gone", "damaged", "changed", "shortened"] as const;
export type RefusedFor = (typeof refusals)[number];

/** A refusal as plain values, by which one thread tells it to another. */
export interface RefusedWith {
  readonly reason: RefusedFor;
  readonly values: Sentence["values"];
  readonly detail: string;
  readonly doubted: boolean;
}

/** The store can't be opened; its file has not been touched. */
export class StoreRefused extends Error {
  readonly reason: RefusedFor;
  readonly sentence: Sentence;
  /** True if the file is not as this program left it, so that damage may be the cause of the reason itself. */
  doubted = false;
  readonly #detail: string;
  constructor(reason: RefusedFor, values?: Sentence["values"], detail = "") {
    super(`store refused: ${reason}${detail === "" ? "" : ` (${detail})`}`);
    this.reason = reason;
    this.sentence = sentence(`store.${reason}`, values);
    this.#detail = detail;
  }

  with(): RefusedWith {
    const { reason, sentence: said, doubted } = this;
    return { reason, values: said.values, detail: this.#detail, doubted };
  }

  static from({ reason, values, detail, doubted }: RefusedWith): StoreRefused {
    const refused = new StoreRefused(reason, values, detail);
    refused.doubted = doubted;
    return refused;
  }
}

/** The reasons that a person may override. The store has passed every other check. */
export const acceptable: readonly RefusedFor[] = ["changed", "shortened"];
