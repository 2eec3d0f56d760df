import { statSync } from "node:fs";
import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { z } from "zod";
import { type Sentence, sentence } from "../domain/words.ts";

/** The files that a rehearsal writes into its folder. */
export const outputNames = ["marks.csv", "rejected.csv", "board.json", "bundle.zip"] as const;

/** The input of a rehearsal: absolute paths, and the day to hold (ISO 8601; null: today). */
export interface RehearsalArguments {
  readonly roster: string;
  readonly results: string;
  readonly past: string | null;
  readonly out: string;
  readonly date: string | null;
}

/** The reason why nothing can be rehearsed: one line, with the usage below it. */
export class WrongArguments extends Error {
  readonly sentence: Sentence;
  constructor(why: Sentence) {
    super(why.key);
    this.sentence = why;
  }
}

const names = ["roster", "results", "past-results", "out", "date"] as const;
type Name = (typeof names)[number];

/** Earlier names of options, which still work. */
const former: ReadonlyMap<string, Name> = new Map([["past", "past-results"]]);

function isName(name: string): name is Name {
  return names.some((each) => each === name);
}

/** Reads the command line, with paths relative to `folder`; null for the usage only. @throws WrongArguments */
export function readArguments(args: readonly string[], folder: string): RehearsalArguments | null {
  const given = new Map<Name, string>();
  for (const token of tokensOf(args)) {
    if (token.kind === "positional")
      throw new WrongArguments(sentence("rehearse.stray", { text: token.value }));
    if (token.kind !== "option") continue;
    if (token.name === "help") return null;
    takeOption(given, token);
  }
  const path = (name: Name) => resolve(folder, required(given, name));
  const past = given.has("past-results") ? path("past-results") : null;
  const wanted = { roster: path("roster"), results: path("results"), past, out: path("out") };
  if (statSync(wanted.out, { throwIfNoEntry: false })?.isDirectory() === false) {
    throw new WrongArguments(sentence("rehearse.outIsFile", { path: wanted.out }));
  }
  refuseOverwriting(wanted);
  return { ...wanted, date: readDate(given.get("date")) };
}

function tokensOf(args: readonly string[]) {
  const string = { type: "string" } as const;
  const options = Object.fromEntries([...names, ...former.keys()].map((name) => [name, string]));
  return parseArgs({ args: [...args], options, strict: false, allowPositionals: true, tokens: true }).tokens;
}

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

function takeOption(given: Map<Name, string>, token: OptionToken): void {
  const { rawName, value, inlineValue } = token;
  const name = former.get(token.name) ?? token.name;
  if (!isName(name)) throw new WrongArguments(sentence("rehearse.unknownOption", { option: rawName }));
  if (given.has(name)) throw new WrongArguments(sentence("rehearse.twice", { option: rawName }));
  // A text like the next option is no value; a file of that name can be given as --roster=--file.
  const isValue = value !== undefined && value !== "" && (inlineValue === true || !value.startsWith("--"));
  if (!isValue) throw new WrongArguments(sentence("rehearse.noValue", { option: rawName }));
  given.set(name, value);
}

function required(given: ReadonlyMap<Name, string>, name: Name): string {
  const value = given.get(name);
  if (value === undefined) throw new WrongArguments(sentence("rehearse.missing", { option: `--${name}` }));
  return value;
}

function readDate(text: string | undefined): string | null {
  if (text === undefined) return null;
  if (!z.iso.date().safeParse(text).success) throw new WrongArguments(sentence("rehearse.date", { text }));
  return text;
}

/** Refuses a results folder in which an input sheet called marks.csv would be overwritten. */
function refuseOverwriting({ roster, results, past, out }: Omit<RehearsalArguments, "date">): void {
  const outputs = outputNames.map((name) => resolve(out, name));
  const lost = [roster, results, past].find((path) => path !== null && outputs.includes(path));
  if (lost) throw new WrongArguments(sentence("rehearse.overwrites", { path: lost }));
}
