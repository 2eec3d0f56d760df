import { type TestCode, testCodes } from "../tests/registry.ts";

/**
 * The questions at the table. The answers live only in the window that asks and are gone when it moves on: they are
 * health data. What leaves the window is the outcome.
 */
export const questions = ["body", "clinician", "hard", "cold"] as const;
export type Question = (typeof questions)[number];

/** A yes to one of these is for the day's medical lead and the organiser to decide; a cold athlete only warms up. */
const worrying: readonly Question[] = ["body", "clinician", "hard"];

/** What the organiser decides: all five tests, all but some, or none today. */
export type Decision = "all" | "some" | "none";

/** null: not answered yet. */
export interface Answers {
  readonly said: Readonly<Record<Question, boolean | null>>;
  readonly decision: Decision | null;
  readonly leaveOut: ReadonlySet<TestCode>;
  /** Asked where the year of birth is not known. */
  readonly under18: boolean | null;
  /** As typed. */
  readonly birthYear: string;
  readonly guardian: boolean | null;
  readonly board: "name" | "bib" | "hidden" | null;
  readonly share: boolean | null;
  /** As typed or scanned; null: the next free one. */
  readonly bib: string | null;
}

/** What is known of somebody before they are asked. */
export interface Known {
  readonly birthYear: number | null;
  readonly mayBeUnder18: boolean;
  readonly guardianConsent: boolean;
  readonly board: "name" | "bib" | "hidden";
  readonly share: boolean;
  readonly asked: boolean;
  readonly leftOut: readonly TestCode[];
}

/** Everything still to be asked; what was answered on another day is filled in and only has to be confirmed. */
export function unanswered(known: Known): Answers {
  return {
    said: { body: null, clinician: null, hard: null, cold: null },
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

/** Whether an answer is one for the medical lead. */
export function worries({ said }: Answers): boolean {
  return worrying.some((question) => said[question] === true);
}

/** What was decided; with nothing to worry about, all tests without having to say so. */
export function decisionOf(answers: Answers): Decision | null {
  return answers.decision ?? (worries(answers) ? null : "all");
}

/** Whether the guardian's consent has to be asked about. */
export function asksGuardian(answers: Answers, known: Known): boolean {
  return known.mayBeUnder18 || (known.birthYear === null && answers.under18 === true);
}

/** The parts of the sheet, in the order in which they are asked. */
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

/** The parts that still need an answer before the athlete is checked in, in order; empty when all is said. */
export function missing(answers: Answers, known: Known): Part[] {
  const decision = decisionOf(answers);
  const open = new Set<Part>(questions.filter((question) => answers.said[question] === null));
  if (decision === null) open.add("decision");
  if (decision === "some" && answers.leaveOut.size === 0) open.add("leaveOut");
  if (decision !== "none") for (const part of ofTesting(answers, known)) open.add(part);
  return parts.filter((part) => open.has(part));
}

/** What only those who test have to say. */
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

/** What leaves the window: nothing of it says why. */
export interface AdmissionOutcome {
  readonly bib: number | null;
  readonly leaveOut: TestCode[];
  readonly board: "name" | "bib" | "hidden" | null;
  readonly share: boolean | null;
  readonly guardianConsent: boolean;
  readonly birthYear: number | null;
}

/** The outcome of answers with nothing missing. */
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
