import { type CheckStep, checkSteps, checkTimeLeft } from "../../domain/backups/check-time.ts";
import { localeOf } from "../../domain/languages.ts";
import { type Answer, guarded } from "../scheme/answer.ts";
import { shellLanguage, shellText } from "../words.ts";
import { escapeText, standalonePage, textAnswer, withLooks } from "./refused-page.ts";

/** What a window shows while the store is examined, before anything can be entered. */
export interface Starting {
  readonly answer: Answer;
  /** Takes note of how far the examination is. */
  tell(at: CheckStep): void;
  /** From now on all is answered by this, also what was asked before. Returns true where a page has said so meanwhile. */
  hand(over: Answer): boolean;
}

interface Parts {
  /** Length of the store's file, in bytes. */
  readonly bytes: number;
  /** The monotonic clock, in ms. */
  ms(): number;
}

/** Ms that a page waits for the program before it says what is being checked: most starts are over by then. */
const patienceMs = 600;

/** Serves the desk's host until its store is examined: a page that says what is being checked, and for how long. */
export function createStarting({ bytes, ms }: Parts): Starting {
  const began = ms();
  let at: CheckStep | null = null;
  let stepBegan = began;
  let over: Answer | null = null;
  let wasShown = false;
  let isOver = () => {};
  const handed = new Promise<void>((resolve) => {
    isOver = resolve;
  });

  const meanwhile = guarded("desk", (request, path) => {
    if (request.method !== "GET") return new Response(null, { status: 405 });
    if (path !== "/") return withLooks(path);
    wasShown = true;
    const since = { begin: ms() - began, step: ms() - stepBegan };
    return textAnswer("text/html", startingPage(at, checkTimeLeft(at, bytes, since)));
  });

  return {
    async answer(request) {
      // The looks of a page that is shown can't wait for what comes after it.
      if (over === null && new URL(request.url).pathname === "/") await Promise.race([handed, later()]);
      return (over ?? meanwhile)(request);
    },
    tell(step) {
      if (step.step !== at?.step) stepBegan = ms();
      at = step;
    },
    hand(answer) {
      over = answer;
      isOver();
      return wasShown;
    },
  };
}

function later(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, patienceMs);
  });
}

/** Makes that page; it asks again each second, until the program answers. `leftMs`: null where it is not known yet. */
export function startingPage(at: CheckStep | null, leftMs: number | null): string {
  const now = at === null ? -1 : checkSteps.indexOf(at.step);
  const steps = checkSteps.map((step, index) => {
    const how = index < now ? "isDone" : index === now ? "isNow" : "isNext";
    const isCounted = at?.step === step && step === "marks";
    const words = isCounted ? shellText("starting.marksDone", counted(at)) : shellText(`starting.${step}`);
    const attributes = how === "isNow" ? ' class="now" aria-current="step"' : "";
    return `<li${attributes}><span>${escapeText(words)}</span> <span>${escapeText(shellText(`starting.${how}`))}</span></li>`;
  });
  const parts = [
    `<p>${escapeText(shellText("starting.why"))}</p>`,
    `<ol class="steps">${steps.join("\n")}</ol>`,
    leftMs === null ? "" : `<p class="working" role="status">${escapeText(timeLeft(leftMs))}</p>`,
  ];
  const again = '<meta http-equiv="refresh" content="1">';
  return standalonePage(shellText("starting.title"), parts.join("\n"), again);
}

function counted({ done, total }: CheckStep): { readonly done: string; readonly total: string } {
  const { format } = new Intl.NumberFormat(localeOf(shellLanguage()));
  return { done: format(done), total: format(total) };
}

/** Says a time roughly: a number that jumps at each look would say more than is known. */
function timeLeft(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  if (seconds <= 5) return shellText("starting.soon");
  if (seconds < 60) return shellText("starting.seconds", { seconds: Math.ceil(seconds / 10) * 10 });
  return shellText("starting.minutes", { count: Math.round(seconds / 60) });
}
