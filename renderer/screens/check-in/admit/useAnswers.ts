import { type RefObject, useRef, useState } from "react";
import {
  type Answers,
  type Known,
  missing as missingOf,
  noToAll,
  type Part,
  unanswered,
} from "../../../../electron/domain/people/questions.ts";

/** The props of each part of the form. */
export interface FormPart {
  readonly answers: Answers;
  readonly known: Known;
  readonly set: (change: Partial<Answers>) => void;
  /** The missing answers, shown once somebody tried to go on without them. */
  readonly missing: ReadonlySet<Part>;
  /** Focuses the first part that still needs an answer, or the button that checks in. */
  readonly focusNext: (answers: Answers) => void;
}

interface Form extends FormPart {
  readonly form: RefObject<HTMLFormElement | null>;
  /** Number of missing answers, shown or not. */
  readonly open: number;
  /** Returns true when nothing is missing; otherwise shows what is, and focuses it. */
  readonly check: () => boolean;
}

/** Holds the answers of one athlete, only while their sheet is open. */
export function useAnswers(known: Known, isSettled: boolean): Form {
  const [answers, setAnswers] = useState(() => startOf(known, isSettled));
  const [tried, setTried] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const open = missingOf(answers, known);

  function focusNext(next: Answers): void {
    const [part] = missingOf(next, known);
    // The part may appear only with the answer just given.
    requestAnimationFrame(() => focusPart(form.current, part ?? "go"));
  }
  function check(): boolean {
    setTried(true);
    if (open.length > 0) focusNext(answers);
    return open.length === 0;
  }
  return {
    answers,
    known,
    set: (change) => setAnswers((before) => ({ ...before, ...change })),
    missing: new Set(tried ? open : []),
    focusNext,
    form,
    open: open.length,
    check,
  };
}

/** Of somebody checked in already nothing about health is open: only the tests and consents are changed. */
function startOf(known: Known, isSettled: boolean): Answers {
  return isSettled ? { ...unanswered(known), said: noToAll } : unanswered(known);
}

function focusPart(form: HTMLFormElement | null, part: Part | "go"): void {
  const inside = form?.querySelector(`[data-part="${part}"]`);
  inside?.querySelector<HTMLElement>("input, button")?.focus();
}
