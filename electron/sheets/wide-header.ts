import { definitionOf, type TestCode } from "../domain/tests/registry.ts";
import { wordsOf } from "./header-words.ts";
import { plainHeader } from "./plain.ts";
import { testWords } from "./test-words.ts";

/** The header of one test's column: "Plank 2026-03-14", "Leap touch 2", "Push-ups (knee)". */
export interface WideHeader {
  readonly test: TestCode;
  /** The field of a long sheet that its cells are; null: the header names the test alone. */
  readonly field: string | null;
  /** Values that the header gives for the whole column, by field. */
  readonly says: Readonly<Record<string, string>>;
  /** As written; "" where there is none. */
  readonly date: string;
  readonly trial: string;
}

type WideKind = "results" | "past";

const dateInside = /\d{4}[-./]\d{1,2}[-./]\d{1,2}|\d{1,2}[-./]\d{1,2}[-./](?:\d{4}|\d{2})/;

const qualifiers: readonly (readonly [word: string, field: string, text: string])[] = [
  ["counterclockwise", "direction", "ccw"],
  ["antihorario", "direction", "ccw"],
  ["clockwise", "direction", "cw"],
  ["horario", "direction", "cw"],
  ["ccw", "direction", "ccw"],
  ["cw", "direction", "cw"],
  ["rodillas", "variant", "knee"],
  ["knees", "variant", "knee"],
  ["knee", "variant", "knee"],
  ["full", "variant", "full"],
  ["inches", "unit", "in"],
  ["cm", "unit", "cm"],
  ["in", "unit", "in"],
];

/** Words that say nothing but that the cells are the mark. */
const ofMark = [
  "result",
  "resultado",
  "mark",
  "marca",
  "score",
  "best",
  "landings",
  "apoyos",
  "seconds",
  "sec",
  "min",
  "mss",
  "s",
];

/** Reads the header of a column of one test; null: it is no such header. */
export function wideHeader(kind: WideKind, header: string): WideHeader | null {
  if (header.length > 200) return null;
  const date = dateInside.exec(header)?.[0] ?? "";
  const word = plainHeader(date === "" ? header : header.replace(date, " "));
  for (const [name, test] of testWords) {
    const rest = word.startsWith(name)
      ? word.slice(name.length)
      : word.endsWith(name)
        ? word.slice(0, -name.length)
        : null;
    const read = rest === null ? null : readRest(kind, test, rest);
    if (read !== null) return { test, date, ...read };
  }
  return null;
}

/** Reads the rest of a header beside the test's name; all of it must be understood. */
function readRest(
  kind: WideKind,
  test: TestCode,
  text: string,
): Pick<WideHeader, "field" | "says" | "trial"> | null {
  const fields = fieldWords(kind, test);
  const says: Record<string, string> = {};
  let field: string | null = null;
  let trial = "";
  let rest = text;
  while (rest !== "") {
    const named = fields.find(([word]) => rest.startsWith(word));
    const said = qualifiers.find(([word]) => rest.startsWith(word));
    const more = /^\d/.exec(rest)?.[0] ?? ofMark.find((word) => rest.startsWith(word));
    if (named !== undefined) field = named[1];
    else if (said !== undefined) says[said[1]] = said[2];
    else if (more === undefined) return null;
    else if (/\d/.test(more)) trial += more;
    rest = rest.slice((named?.[0] ?? said?.[0] ?? more ?? "").length);
  }
  return { field, says, trial };
}

/** The words for the columns that a test needs, the longest first. */
function fieldWords(kind: WideKind, test: TestCode): (readonly [word: string, field: string])[] {
  const names =
    kind === "past" ? ["variant"] : ["variant", ...definitionOf(test).sheet.columns.map(({ name }) => name)];
  return names
    .flatMap((name) => wordsOf("results", name).map((word) => [word, name] as const))
    .filter(([, name]) => name !== "unit")
    .sort(([one], [other]) => other.length - one.length);
}
