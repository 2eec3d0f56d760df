import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { dropCopy, holdCopy, isOfToday, type KeptRow, keptHere } from "./device-keep.ts";
import { isDevice } from "./table.ts";

/** What was typed of a correction. */
export interface CorrectionDraft {
  readonly values: Typed;
  readonly lengths: LengthUnit;
  readonly bib: string;
  readonly reason: string;
}

/**
 * What somebody has half typed at a device's station: an entry from paper, a correction, a reading of a live heat. It
 * outlives the page, which begins anew when the organiser gives the device another place, and lies sealed beside what the
 * device sends, until it is saved or taken back, the day is closed, or the table lets the device go.
 */
export type KeptDraft = Whose &
  (
    | { readonly is: "entry"; readonly typed: Typed }
    | { readonly is: "correction"; readonly attemptId: string; readonly draft: CorrectionDraft }
    | { readonly is: "reading"; readonly heatId: string; readonly text: string }
  );

interface Whose {
  readonly test: TestCode;
  readonly athleteId: number;
  readonly bib: string;
}

const channel = "drafts";

/** True for a row of the device's keep that is a draft. */
export function isDraft(row: KeptRow): boolean {
  return row.channel === channel;
}

/** Returns all that is half typed on this device today; nothing in the program's own windows. */
export function keptDrafts(): readonly KeptDraft[] {
  return keptHere
    .get()
    .filter((row) => isDraft(row) && isOfToday(row))
    .map(draftOf);
}

/** Returns a station's half-typed entry; null for none. */
export function keptEntry(test: TestCode): (KeptDraft & { readonly is: "entry" }) | null {
  for (const each of keptDrafts()) if (each.is === "entry" && each.test === test) return each;
  return null;
}

/** Returns a station's half-typed correction; null for none. */
export function keptCorrection(test: TestCode): (KeptDraft & { readonly is: "correction" }) | null {
  for (const each of keptDrafts()) if (each.is === "correction" && each.test === test) return each;
  return null;
}

/** Returns what is half typed of an athlete's reading in a heat; null for nothing. */
export function keptReading(heatId: string, athleteId: number): string | null {
  for (const each of keptDrafts())
    if (each.is === "reading" && each.heatId === heatId && each.athleteId === athleteId) return each.text;
  return null;
}

/** Returns the draft in a row of the device's keep. */
export function draftOf({ item }: KeptRow): KeptDraft {
  return item as KeptDraft & { readonly id: string };
}

/** Keeps a draft in place of the one before it; in the program's own windows nothing. */
export function keepDraft(draft: KeptDraft): void {
  if (isDevice) holdCopy(channel, { ...draft, id: nameOf(draft) });
}

/** Forgets an entry, a correction, or one athlete's reading: it was saved or taken back. */
export function dropDraft(draft: Pick<KeptDraft, "is" | "test"> & Partial<Whose>): void {
  if (isDevice) dropCopy(channel, nameOf(draft));
}

/** Forgets the readings of a test that has no heat any more. */
export function dropReadings(test: TestCode): void {
  for (const draft of keptDrafts()) if (draft.is === "reading" && draft.test === test) dropDraft(draft);
}

/** A station has one entry and one correction; a heat has a reading for each athlete. */
function nameOf({ is, test, athleteId }: Pick<KeptDraft, "is" | "test"> & Partial<Whose>): string {
  return is === "reading" ? `${is} ${test} ${athleteId}` : `${is} ${test}`;
}
