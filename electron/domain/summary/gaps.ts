import type { Mark } from "../tests/protocol.ts";
import type { TestCode } from "../tests/registry.ts";
import type { SummaryDay, SummaryMark, SummaryPerson } from "./day.ts";

/**
 * The reasons for a missing mark. no-show: never came; expected: still to come to the table; not-testing: here, but
 * takes no test today; left-out: decided at check-in, no reason is kept; skipped: with a reason; withdrawn: stopped for
 * the day; half-done: begun, part of it missing; not-finished: a timed task stopped early; taken-back: entered, and
 * void since; to-come: still to be taken; not-taken: the day ended without it.
 */
export const gapKinds = [
  "no-show",
  "expected",
  "not-testing",
  "left-out",
  "skipped",
  "withdrawn",
  "half-done",
  "not-finished",
  "taken-back",
  "to-come",
  "not-taken",
] as const;
export type GapKind = (typeof gapKinds)[number];

/** A test without a complete mark. */
export interface Gap {
  readonly kind: GapKind;
  /** The stated reason for skipping or voiding it; empty where there is none. */
  readonly reason: string;
  /** Initials of whoever decided; empty where nobody did. */
  readonly by: string;
  /** The incomplete part of a mark, if any. */
  readonly mark: Exclude<Mark, { readonly state: "complete" }> | null;
}

function plain(kind: GapKind): Gap {
  return { kind, reason: "", by: "", mark: null };
}

/**
 * Returns why an athlete has no complete mark of a test; null when there is one. Attempts decide first, then decisions
 * about the test, then the athlete's state.
 * @param marks the athlete's marks of this test, all variants
 */
export function gapOf(
  day: SummaryDay,
  person: SummaryPerson,
  test: TestCode,
  marks: readonly SummaryMark[],
): Gap | null {
  if (marks.some(({ mark }) => mark.state === "complete")) return null;
  return (
    ofMark(marks) ?? ofPerson(day, person) ?? ofDecision(day, person, test) ?? plain(openGap(day, person))
  );
}

function ofMark(marks: readonly SummaryMark[]): Gap | null {
  for (const { mark } of marks) {
    if (mark.state === "unfinished") return { ...plain("not-finished"), mark };
    if (mark.state === "incomplete") return { ...plain("half-done"), mark };
  }
  return null;
}

/** Returns the gap of an athlete who takes no test at all. */
function ofPerson({ state: day }: SummaryDay, { state }: SummaryPerson): Gap | null {
  if (state === "no-show" || state === "not-testing") return plain(state);
  // An athlete still expected when the day closed did not come.
  if (state === "expected") return plain(day === "closed" ? "no-show" : "expected");
  return null;
}

function ofDecision(day: SummaryDay, { athleteId }: SummaryPerson, test: TestCode): Gap | null {
  const left = day.leftOut.find((each) => each.athleteId === athleteId && each.test === test);
  if (left?.kind === "readiness") return { ...plain("left-out"), by: left.decidedBy };
  if (left !== undefined) return { ...plain("skipped"), reason: left.reason, by: left.decidedBy };
  const last = day.attempts.findLast((each) => each.athleteId === athleteId && each.test === test);
  if (last?.void == null) return null;
  return { ...plain("taken-back"), reason: last.void.reason, by: last.void.by };
}

function openGap({ state: day }: SummaryDay, { state }: SummaryPerson): GapKind {
  if (state === "withdrawn") return "withdrawn";
  return day === "closed" ? "not-taken" : "to-come";
}
