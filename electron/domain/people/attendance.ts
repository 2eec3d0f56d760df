import { Refusal } from "../refusal.ts";
import { type TestCode, testCodes } from "../tests/registry.ts";
import { sentence } from "../words.ts";
import { mayBeUnder18 } from "./age.ts";

/** The facts that decide an admission: the outcome of the questions, never an answer. */
export interface Admission {
  readonly name: string;
  readonly birthYear: number | null;
  readonly guardianConsent: boolean;
  /** Tests skipped after the readiness questions; all five mean that the athlete does not test. */
  readonly leaveOut: readonly TestCode[];
  /** The day, ISO 8601. */
  readonly date: string;
  /** True when the athlete has standing attempts on this day. */
  readonly hasAttempts: boolean;
}

/**
 * Decides an admission: testing, or here and not testing.
 * @throws Refusal when somebody who may be under 18 has no guardian's consent, or when somebody who has already been
 * measured would skip everything (that is a withdrawal).
 */
export function admit(admission: Admission): "testing" | "not-testing" {
  const { name, birthYear, guardianConsent, leaveOut, date, hasAttempts } = admission;
  const testsNothing = testCodes.every((test) => leaveOut.includes(test));
  if (testsNothing && hasAttempts)
    throw new Refusal("conflict", sentence("checkIn.alreadyMeasured", { name }));
  if (testsNothing) return "not-testing";
  if (mayBeUnder18(birthYear, date) && !guardianConsent) {
    throw new Refusal("bad-input", sentence("checkIn.guardian", { name }));
  }
  return "testing";
}

/**
 * Checks that a check-in can be undone.
 * @throws Refusal `conflict` when there are standing attempts: withdraw the athlete instead.
 */
export function mayUndo(name: string, hasAttempts: boolean): void {
  if (hasAttempts) throw new Refusal("conflict", sentence("checkIn.undoMeasured", { name }));
}

/** Checks that somebody can be a no-show. @throws Refusal `conflict` when the athlete is here already. */
export function mayBeNoShow(name: string, state: string): void {
  if (state !== "expected" && state !== "no-show") {
    throw new Refusal("conflict", sentence("checkIn.isHere", { name }));
  }
}

/** Returns the bibs of `count` more people: the smallest free ones, from 1. */
export function freeBibs(taken: Iterable<number>, count: number): number[] {
  const used = new Set(taken);
  const free: number[] = [];
  for (let bib = 1; free.length < count; bib += 1) if (!used.has(bib)) free.push(bib);
  return free;
}
