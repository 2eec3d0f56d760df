import { z } from "zod";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { dayOfKeep } from "./device-keep.ts";

/**
 * What is half typed at a device's stations. It outlives the page, which begins anew when the organiser gives the device
 * another place; with the browser's tab, or when the table lets the device go, it ends.
 */
const draftSchema = z.object({
  day: z.string(),
  bib: z.string(),
  isFound: z.boolean(),
  typed: z.record(z.string(), z.string()),
});

type KeptDraft = z.infer<typeof draftSchema>;

const placeOf = (test: TestCode) => `station.draft.${test}`;

/** Returns what was left half typed at a station of this device today; null for nothing. */
export function keptDraft(test: TestCode): KeptDraft | null {
  const kept = sessionStorage.getItem(placeOf(test));
  if (kept === null) return null;
  const draft = draftSchema.parse(JSON.parse(kept));
  return draft.day === dayOfKeep() ? draft : null;
}

/** Keeps what is half typed at a station; an entry without any value is nothing to keep. */
export function keepDraft(test: TestCode, draft: Omit<KeptDraft, "day">): void {
  const isTyped = Object.values(draft.typed).some((text) => text.trim() !== "");
  if (isTyped) sessionStorage.setItem(placeOf(test), JSON.stringify({ ...draft, day: dayOfKeep() }));
  else sessionStorage.removeItem(placeOf(test));
}

/** Forgets all of it. */
export function dropDrafts(): void {
  for (const test of testCodes) sessionStorage.removeItem(placeOf(test));
}
