import { createHash } from "node:crypto";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";

/** The content that identifies a row of results when its sheet is imported again. */
export interface SheetAttempt {
  readonly dayId: number;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  /** As parsed, so that its keys are always in the same order. */
  readonly seen: unknown;
}

/**
 * Returns the id of an attempt from a sheet, as a UUID (version 8 of RFC 9562: made from content). `occurrence` counts
 * equal rows of one sheet from 1: three equal leaps are three attempts, and the same three when the sheet is imported
 * once more.
 */
export function attemptId(attempt: SheetAttempt, occurrence: number): string {
  return idOf(contentOf(attempt), occurrence);
}

function idOf(content: string, occurrence: number): string {
  const hex = createHash("sha256").update(`${content}\n${occurrence}`).digest("hex");
  const variant = "89ab"[Number.parseInt(hex.charAt(16), 16) % 4];
  return [hex.slice(0, 8), hex.slice(8, 12), `8${hex.slice(13, 16)}`, `${variant}${hex.slice(17, 20)}`]
    .concat(hex.slice(20, 32))
    .join("-");
}

/** Equal rows of one sheet are fewer than this: an attempt whose import was undone counts on from here. */
const anew = 1_000_000;

/**
 * Returns the id of an attempt with this content ({@link contentOf}) as {@link attemptId} does, but for those whose import
 * was undone: they are entered anew.
 */
export function freshAttemptId(content: string, occurrence: number, undone: ReadonlySet<string>): string {
  for (let counted = occurrence; ; counted += anew) {
    const id = idOf(content, counted);
    if (!undone.has(id)) return id;
  }
}

/** Returns an attempt's content as text; equal attempts give equal texts, the same in every version of the program. */
export function contentOf({ dayId, athleteId, test, variant, seen }: SheetAttempt): string {
  const known = definitionOf(test).sheet.knownAs?.(seen) ?? seen;
  return [dayId, athleteId, test, variant, JSON.stringify(known)].join("\n");
}
