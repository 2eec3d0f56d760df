import { type RefObject, useRef, useState } from "react";
import {
  type Answers,
  type Known,
  missing as missingOf,
  type Part,
  unanswered,
} from "../../../../electron/domain/people/questions.ts";

/** What each part of the form is given. */
export interface FormPart {
  readonly answers: Answers;
  readonly known: Known;
  readonly set: (change: Partial<Answers>) => void;
  /** What is missing, once somebody tried to go on without it. */
  readonly missing: ReadonlySet<Part>;
  /** Moves to the first part of these answers that still needs something, or to the button that checks in. */
  readonly focusNext: (answers: Answers) => void;
}

interface Form extends FormPart {
  readonly form: RefObject<HTMLFormElement | null>;
  /** How many answers are missing now, tried or not. */
  readonly open: number;
  /** True when nothing is missing; otherwise shows what is, and goes there. */
  readonly check: () => boolean;
}

/** The answers of one person, for as long as their sheet is open and not a moment longer. */
export function useAnswers(known: Known): Form {
  const [answers, setAnswers] = useState(() => unanswered(known));
  const [tried, setTried] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const open = missingOf(answers, known);

  function focusNext(next: Answers): void {
    const [part] = missingOf(next, known);
    // The part may only appear with the answer that was just given.
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

function focusPart(form: HTMLFormElement | null, part: Part | "go"): void {
  const inside = form?.querySelector(`[data-part="${part}"]`);
  inside?.querySelector<HTMLElement>("input, button")?.focus();
}
