import { type GapKind, gapKinds } from "../../../domain/summary/gaps.ts";

const gaps: Readonly<Record<GapKind, string>> = {
  "no-show": "never came",
  expected: "still expected at the table",
  "not-testing": "here, and takes no test today",
  "left-out": "left out as decided at check-in (no reason is kept)",
  skipped: "skipped with a reason",
  withdrawn: "stopped for the day",
  "half-done": "begun and not whole (one direction of the quadrant jump)",
  "not-finished": "the circuit was stopped before its end",
  "taken-back": "entered, and void since",
  "to-come": "still to be taken",
  "not-taken": "the day ended without it",
};

/** The meaning of code values, for the data dictionary. */
export const gapCodes = gapKinds.map((kind) => `\`${kind}\` ${gaps[kind]}`).join("; ");

export const standingCodes =
  "`first` no earlier mark; `best` better than all; `equal` as good as the best; `below` below the best";

export const verdictCodes =
  "`clear gain` seen by chance in at most 2.5 % of those who stayed the same; `likely gain` in at most 20 %; `noise` within test noise; " +
  "`likely loss` and `clear loss` the same the other way. Empty: nothing to hold it against";
