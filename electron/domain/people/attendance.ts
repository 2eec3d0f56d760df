import { Refusal } from "../refusal.ts";
import { type TestCode, testCodes } from "../tests/registry.ts";
import { sentence } from "../words.ts";
import { mayBeUnder18 } from "./age.ts";

/** What decides whether somebody may be checked in: the outcome of the questions, never an answer. */
export interface Admission {
  readonly name: string;
  readonly birthYear: number | null;
  readonly guardianConsent: boolean;
  /** Tests left out after the readiness questions; all five mean that the athlete does not test. */
  readonly leaveOut: readonly TestCode[];
  /** The day, ISO 8601. */
  readonly date: string;
  /** True when the athlete has attempts that stand on this day. */
  readonly hasAttempts: boolean;
}

/**
 * Decides an admission: testing, or here and not testing.
 * @throws Refusal when somebody who may be under 18 has no guardian's consent, or when somebody who has already been
 * measured would leave out everything (that is a withdrawal).
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
 * Whether a check-in can be undone.
 * @throws Refusal `conflict` when attempts stand: withdrawing is the way then.
 */
export function mayUndo(name: string, hasAttempts: boolean): void {
  if (hasAttempts) throw new Refusal("conflict", sentence("checkIn.undoMeasured", { name }));
}

/**
 * Whether somebody can be marked as not having come.
 * @throws Refusal `conflict` when the athlete is here already.
 */
export function mayBeNoShow(name: string, state: string): void {
  if (state !== "expected" && state !== "no-show") {
    throw new Refusal("conflict", sentence("checkIn.isHere", { name }));
  }
}

/** The bibs that `count` more people get: the smallest that nobody has, from 1. */
export function freeBibs(taken: Iterable<number>, count: number): number[] {
  const used = new Set(taken);
  const free: number[] = [];
  for (let bib = 1; free.length < count; bib += 1) if (!used.has(bib)) free.push(bib);
  return free;
}
