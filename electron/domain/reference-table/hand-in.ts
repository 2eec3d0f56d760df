import type { core } from "zod";
import { intervalOf, type MarkBounds } from "../privacy/coding.ts";
import type { BundleTest } from "../reference/bundle.ts";
import { readJson } from "../reference/json.ts";
import { refused, shown } from "../reference/refused.ts";
import { parametersOf } from "../tests/parameters-of.ts";
import { protocolOf, testCodes } from "../tests/registry.ts";
import { inUnit } from "../units.ts";
import { type Sentence, sentence } from "../words.ts";
import { type handInCategories, handInCodings, handInVersion } from "./hand-in-coding.ts";
import { type FileOfHandIn, handInBeginning, handInSchema, mostOfHandIn } from "./hand-in-schema.ts";

/** What one person hands in for a reference table. Nobody's name, hall or day; no result exactly. */
export interface HandIn {
  /** Random, of this file alone (`handInId`): so that the same file twice counts once. */
  readonly id: string;
  readonly category: (typeof handInCategories)[number];
  /** `25 to 29`, or `not told`. */
  readonly ageBand: string;
  /** One at most of each test and variant. */
  readonly results: readonly HandedResult[];
}

/** One result of it (bounds in grains). */
interface HandedResult extends BundleTest, MarkBounds {}

/** A result as it was measured (grains), before it is handed in. */
export interface ExactResult extends BundleTest {
  readonly value: number;
}

/** Makes the id of a file of 16 random bytes. */
export function handInId(bytes: Uint8Array): string {
  return Array.from(bytes.subarray(0, 16), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Makes what is handed in of exact results: each becomes the part of its test's coding that it lies in. */
export function makeHandIn(
  about: Pick<HandIn, "id" | "category" | "ageBand">,
  results: readonly ExactResult[],
): HandIn {
  const { id, category, ageBand } = about;
  return {
    ...{ id, category, ageBand },
    results: results.map(({ test, variant, fingerprint, value }) => ({
      ...{ test, variant, fingerprint },
      ...intervalOf(value, handInCodings[test]),
    })),
  };
}

/** Writes it as the text of its file: JSON by hand-in.schema.json, every field always there and in the same order. */
export function writeHandIn({ id, category, ageBand, results }: HandIn): string {
  const file = {
    ...{ handInVersion, id, category, ageBand },
    results: results.map(({ test, variant, fingerprint, low, high }) => {
      const { grain } = protocolOf(test);
      const inUnits = (bound: number | null) => (bound === null ? null : inUnit(grain, bound));
      return {
        ...{ test, variant, rules: fingerprint },
        ...{ low: inUnits(low), high: inUnits(high), unit: grain.unit },
      };
    }),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/**
 * Reads a file that somebody handed in, which may be anything.
 * @throws Refusal `bad-input` with the first reason to refuse it.
 */
export function readHandIn(text: string): HandIn {
  const read = readJson(text, mostOfHandIn);
  const { data: begun } = handInBeginning.safeParse(read?.value);
  if (begun === undefined) throw refused(sentence("handIn.other"));
  const { handInVersion: version } = begun;
  if (version !== handInVersion) {
    const told = typeof version === "number" ? version : "?";
    throw refused(sentence("handIn.version", { version: told, known: handInVersion }));
  }
  const { data, error } = handInSchema.safeParse(read?.value);
  if (data === undefined) throw refused(reasonOf(error.issues[0]));
  const { id, category, ageBand } = data;
  const results = data.results.map(resultOf);
  const names = new Set(results.map(({ test, variant }) => `${test}/${variant}`));
  if (names.size !== results.length) throw refused(sentence("handIn.twice"));
  return { id, category, ageBand, results };
}

/** The sentence for the first thing that a schema has against a file. */
function reasonOf(issue: core.$ZodIssue | undefined): Sentence {
  if (issue?.code === "unrecognized_keys") {
    return sentence("handIn.more", { name: shown(issue.keys.join(", ")) });
  }
  const [field, , inResult] = issue?.path ?? [];
  if (field === "results" && inResult === undefined) return sentence("handIn.results");
  if (inResult === "test") return sentence("handIn.test");
  return sentence("handIn.field", { name: String(inResult ?? field) });
}

type ReadResult = FileOfHandIn["results"][number];

/** @throws Refusal `bad-input` for rules that the test does not have, or bounds that are no part of its coding. */
function resultOf({ test: code, variant, rules, low, high }: ReadResult): HandedResult {
  const test = testCodes.find((each) => each === code);
  if (test === undefined) throw refused(sentence("handIn.test"));
  if (parametersOf(test, variant, rules) === undefined) {
    throw refused(sentence("handIn.field", { name: "rules" }));
  }
  const { perUnit } = protocolOf(test).grain;
  const inGrains = (bound: number | null) => (bound === null ? null : bound * perUnit);
  const bounds = { low: inGrains(low), high: inGrains(high) };
  const coding = handInCodings[test];
  const within = intervalOf(bounds.low ?? coding.below - 1, coding);
  if (within.low !== bounds.low || within.high !== bounds.high) {
    throw refused(sentence("handIn.field", { name: "high" }));
  }
  return { test, variant, fingerprint: rules, ...bounds };
}
