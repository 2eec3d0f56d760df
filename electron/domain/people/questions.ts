import { type TestCode, testCodes } from "../tests/registry.ts";

/**
 * The questions at the table. The answers live only in the window that asks and are gone when it moves on, because they
 * are health data. Only the outcome leaves the window.
 */
export const questions = ["heart", "head", "clinician", "body", "medicine", "hard", "cold"] as const;
export type Question = (typeof questions)[number];

/** The people who decide about a yes, the strictest first. */
const deciders = ["doctor", "medicalLead", "organiser"] as const;
export type Decider = (typeof deciders)[number];

/**
 * The decider about a yes to each question; null: a cold athlete only warms up. Whatever can hurt most in a hard effort
 * is for a doctor alone. The grouping is common practice, no source; resources/locales/README.md names the source of
 * the questions.
 */
const decidesAbout: Readonly<Record<Question, Decider | null>> = {
  heart: "doctor",
  head: "doctor",
  clinician: "doctor",
  body: "medicalLead",
  medicine: "medicalLead",
  hard: "organiser",
  cold: null,
};

/** A no to every question. */
export const noToAll: Answers["said"] = {
  ...{ heart: false, head: false, clinician: false },
  ...{ body: false, medicine: false, hard: false, cold: false },
};

/** The organiser's decision: all five tests, some, or none today. */
export type Decision = "all" | "some" | "none";

/** null: not answered yet. */
export interface Answers {
  readonly said: Readonly<Record<Question, boolean | null>>;
  readonly decision: Decision | null;
  readonly leaveOut: ReadonlySet<TestCode>;
  /** Asked where the year of birth is unknown. */
  readonly under18: boolean | null;
  /** As typed. */
  readonly birthYear: string;
  readonly guardian: boolean | null;
  readonly board: "name" | "bib" | "hidden" | null;
  readonly share: boolean | null;
  /** As typed or scanned; null: the next free bib. */
  readonly bib: string | null;
}

/** The facts known about an athlete before the questions. */
export interface Known {
  readonly birthYear: number | null;
  readonly mayBeUnder18: boolean;
  readonly guardianConsent: boolean;
  readonly board: "name" | "bib" | "hidden";
  readonly share: boolean;
  readonly asked: boolean;
  readonly leftOut: readonly TestCode[];
}

/** Returns blank answers; those from another day are filled in and only have to be confirmed. */
export function unanswered(known: Known): Answers {
  return {
    said: { heart: null, head: null, clinician: null, body: null, medicine: null, hard: null, cold: null },
    decision: known.leftOut.length > 0 ? "some" : null,
    leaveOut: new Set(known.leftOut),
    under18: null,
    birthYear: "",
    guardian: known.guardianConsent ? true : null,
    board: known.asked ? known.board : null,
    share: known.asked ? known.share : null,
    bib: null,
  };
}

/** The strictest of those who have to decide about a yes; null where nobody has to. */
export function deciderOf({ said }: Answers): Decider | null {
  const asked = questions
    .filter((question) => said[question] === true)
    .map((question) => decidesAbout[question]);
  return deciders.find((decider) => asked.includes(decider)) ?? null;
}

/** Returns the decision; all tests, without asking, if no answer concerns the medical lead. */
export function decisionOf(answers: Answers): Decision | null {
  return answers.decision ?? (deciderOf(answers) === null ? "all" : null);
}

/** True if the guardian's consent has to be asked for. */
export function asksGuardian(answers: Answers, known: Known): boolean {
  return known.mayBeUnder18 || (known.birthYear === null && answers.under18 === true);
}

/** The parts of the sheet, in the order of asking. */
const parts = [
  ...questions,
  "decision",
  "leaveOut",
  "under18",
  "birthYear",
  "guardian",
  "board",
  "share",
  "bib",
] as const;
export type Part = (typeof parts)[number];

/** Returns the parts without an answer that the check-in needs, in order; empty when it is complete. */
export function missing(answers: Answers, known: Known): Part[] {
  const decision = decisionOf(answers);
  const open = new Set<Part>(questions.filter((question) => answers.said[question] === null));
  if (decision === null) open.add("decision");
  if (decision === "some" && answers.leaveOut.size === 0) open.add("leaveOut");
  if (decision !== "none") for (const part of ofTesting(answers, known)) open.add(part);
  return parts.filter((part) => open.has(part));
}

/** Returns the missing parts that only concern athletes who test. */
function ofTesting(answers: Answers, known: Known): Part[] {
  const open: Part[] = [];
  if (known.birthYear === null && answers.under18 === null) open.push("under18");
  if (known.birthYear === null && answers.under18 === true && !/^\d{4}$/.test(answers.birthYear)) {
    open.push("birthYear");
  }
  if (asksGuardian(answers, known) && answers.guardian !== true) open.push("guardian");
  if (answers.board === null) open.push("board");
  if (answers.share === null) open.push("share");
  if (answers.bib !== null && !/^[1-9]\d{0,3}$/.test(answers.bib.trim())) open.push("bib");
  return open;
}

/** True if a test that was skipped until now is to be done after all: it may have been skipped for health. */
export function bringsBack(answers: Answers, known: Known): boolean {
  const { leaveOut } = outcomeOf(answers, known);
  return known.leftOut.some((test) => !leaveOut.includes(test));
}

/** The outcome that leaves the window; it never says why. */
export interface AdmissionOutcome {
  readonly bib: number | null;
  readonly leaveOut: TestCode[];
  readonly board: "name" | "bib" | "hidden" | null;
  readonly share: boolean | null;
  readonly guardianConsent: boolean;
  readonly birthYear: number | null;
}

/** Returns the outcome of complete answers. */
export function outcomeOf(answers: Answers, known: Known): AdmissionOutcome {
  const decision = decisionOf(answers);
  const leaveOut = { all: [], some: testCodes.filter((test) => answers.leaveOut.has(test)), none: testCodes };
  const typedYear = known.birthYear === null && answers.under18 === true && answers.birthYear !== "";
  return {
    bib: decision === "none" || answers.bib === null ? null : Number(answers.bib),
    leaveOut: [...leaveOut[decision ?? "all"]],
    board: answers.board,
    share: answers.share,
    guardianConsent: asksGuardian(answers, known) ? answers.guardian === true : known.guardianConsent,
    birthYear: typedYear ? Number(answers.birthYear) : null,
  };
}
