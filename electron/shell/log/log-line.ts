import { constants } from "node:os";
import { refusals } from "../../store/connection/refused.ts";
import { isPlace, type LogPlace } from "./log-place.ts";

/**
 * An event for the log: numbers, and words from short lists. No event carries typed text, a name, a mark, a path or an
 * error's own message, so that anybody may see a log. Only {@link lineOf} makes lines, and it leaves out everything
 * that is not in the lists.
 */
export type LogEvent =
  | {
      readonly what: "started";
      readonly version: string;
      readonly electron: string;
      readonly system: string;
      readonly release: string;
      readonly processor: string;
      readonly packaged: boolean;
      readonly sandbox: boolean;
    }
  | { readonly what: "ended"; readonly blocked: number }
  | { readonly what: "store"; readonly is: string }
  | ({ readonly what: "fault"; readonly where: string } & LoggedFault)
  | ({ readonly what: "page-gone"; readonly reason: string } & LogPlace)
  | ({ readonly what: "page-hung" } & LogPlace)
  | ({ readonly what: "page-error"; readonly error: string; readonly at: string } & LogPlace)
  | { readonly what: "process-gone"; readonly type: string; readonly reason: string; readonly code: number }
  | { readonly what: "left-out"; readonly lines: number };

/** The logged facts of an error: its kind, the system's code, and its place in the program. */
export interface LoggedFault {
  readonly error: string;
  readonly code: string;
  readonly call: string;
  /** Places in the built program, innermost first: `main.js:120:7`. */
  readonly at: string;
}

/** Makes one line for the log, without its end; `at` is wall time. */
export function lineOf(event: LogEvent, at: Date): string {
  const { what, ...rest } = event;
  const allowed = rules[what] as Readonly<Record<string, Rule>>;
  const told = Object.entries(rest).flatMap(([field, value]) => {
    const text = String(value);
    if (text === "") return [];
    // Of a list, the allowed parts stay.
    const parts = text.split(",").map((part) => (allowed[field]?.test(part) === true ? part : "?"));
    return [`${field}=${parts.join(",")}`];
  });
  return [at.toISOString(), what, ...told].join(" ");
}

interface Rule {
  /** True if a text, or a part of a list, may be in a line as it is. */
  test(text: string): boolean;
}

function oneOf(words: string): Rule {
  const known = new Set(words.split(" "));
  return { test: (text) => known.has(text) };
}

const count = /^-?\d{1,12}$/;
const versionNumber = /^\d{1,5}(\.\d{1,9}){0,3}$/;
const yesOrNo = oneOf("true false");
const host = oneOf("desk board device other");
/** The kinds of error of the language, the system and the program. */
const errorKind = oneOf(
  "Error TypeError RangeError ReferenceError SyntaxError EvalError URIError AggregateError SuppressedError " +
    "DOMException AbortError TimeoutError NotAllowedError NotFoundError QuotaExceededError InvalidStateError " +
    "SqliteError StoreRefused TRPCError TRPCClientError ZodError Cancelled other",
);
const goneReason = oneOf(
  "clean-exit abnormal-exit killed crashed oom launch-failed integrity-failure memory-eviction",
);
/** A place in the program: a file of the build or of Node by its bare name, a line and a column. */
const builtPlace =
  /^(?:(?:main|database|wrappers|transaction|pragma|backup)\.js|preload\.cjs|[A-Za-z-]+-[\w-]{8}\.js|node:[a-z0-9_/]+):\d{1,7}:?\d{0,7}$/;
const place: Rule = { test: isPlace };

const rules: Readonly<Record<LogEvent["what"], Readonly<Record<string, Rule>>>> = {
  started: {
    version: versionNumber,
    electron: versionNumber,
    system: oneOf("linux darwin win32"),
    release: versionNumber,
    processor: oneOf("x64 arm64 ia32 arm"),
    packaged: yesOrNo,
    sandbox: yesOrNo,
  },
  ended: { blocked: count },
  store: { is: oneOf(`opened unopened checked unchecked ${refusals.join(" ")}`) },
  fault: {
    where: oneOf("main promise console"),
    error: errorKind,
    code: { test: (text) => text in constants.errno || /^(?:SQLITE|ERR)_[A-Z_]{2,50}$/.test(text) },
    call: oneOf("open read write fsync close rename unlink mkdir rmdir scandir stat lstat copyfile listen"),
    at: builtPlace,
  },
  "page-gone": { host, place, reason: goneReason },
  "page-hung": { host, place },
  "page-error": { host, place, error: errorKind, at: builtPlace },
  "process-gone": {
    type: oneOf("Utility Zygote GPU Pepper_Plugin Sandbox_helper Unknown"),
    reason: goneReason,
    code: count,
  },
  "left-out": { lines: count },
};
