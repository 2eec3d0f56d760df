import { readFileSync } from "node:fs";
import { Validator } from "@cfworker/json-schema";
import fc from "fast-check";
import { expect, test } from "vitest";
import { z } from "zod";
import {
  type ExactResult,
  handInId,
  makeHandIn,
  readHandIn,
  writeHandIn,
} from "../../../electron/domain/reference-table/hand-in.ts";
import {
  handInAgeBands,
  handInCategories,
  handInCodings,
  handInVersion,
} from "../../../electron/domain/reference-table/hand-in-coding.ts";
import { handInSchema } from "../../../electron/domain/reference-table/hand-in-schema.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { fingerprint } from "../../../electron/domain/tests/fingerprint.ts";
import {
  defaultParameters,
  protocolOf,
  rulesVersion,
  testCodes,
} from "../../../electron/domain/tests/registry.ts";

const schemaFile = "electron/domain/reference-table/hand-in.schema.json";
const published: unknown = JSON.parse(readFileSync(schemaFile, "utf8"));
const independent = new Validator(published as object, "2020-12");

const id = handInId(Uint8Array.from({ length: 16 }, (_none, index) => index * 17));
const about = { id, category: "women", ageBand: "25 to 29" } as const;

/** Every test and variant by the standard rules. */
const tested = testCodes.flatMap((code) =>
  protocolOf(code).variants.map((variant) => ({
    ...{ test: code, variant },
    fingerprint: fingerprint(code, variant, defaultParameters(code)),
  })),
);
const pushUps: ExactResult = { test: "push-up", variant: "full", ...rulesOf("push-up", "full"), value: 23 };

function rulesOf(code: string, variant: string) {
  const { fingerprint: text = "" } =
    tested.find((each) => each.test === code && each.variant === variant) ?? {};
  return { fingerprint: text };
}

/** Somebody's results: any of the tests, any value that a mark can have. */
const results = fc
  .tuple(
    ...tested.map((each) =>
      fc.option(fc.integer({ min: 0, max: 2_000_000 }).map((value) => ({ ...each, value }))),
    ),
  )
  .map((each) => each.filter((one) => one !== null))
  .filter((each) => each.length > 0);
const anybody = fc.record({
  id: fc.uint8Array({ minLength: 16, maxLength: 16 }).map(handInId),
  category: fc.constantFrom(...handInCategories),
  ageBand: fc.constantFrom(...handInAgeBands),
});

/** The key of the sentence with which a text is refused, and the values in it, or "taken". */
function whyNot(text: string): string {
  try {
    readHandIn(text);
    return "taken";
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return [error.sentence.key, ...Object.values(error.sentence.values ?? {})].join(" ");
  }
}

/** The file of one push-up result with one thing changed. */
function changed(change: (file: Record<string, unknown>, result: Record<string, unknown>) => void): string {
  const file = JSON.parse(writeHandIn(makeHandIn(about, [pushUps])));
  change(file, file.results[0]);
  return JSON.stringify(file);
}

test("a result is handed in as the step in which it lies, in a file that says that and no more", () => {
  expect(writeHandIn(makeHandIn(about, [pushUps]))).toBe(`{
  "handInVersion": 1,
  "id": "00112233445566778899aabbccddeeff",
  "category": "women",
  "ageBand": "25 to 29",
  "results": [
    {
      "test": "push-up",
      "variant": "full",
      "rules": "push-up/full beatsPerRep=2 bpm=40 missesToStop=3",
      "low": 20,
      "high": 25,
      "unit": "reps"
    }
  ]
}
`);
});

test("what is handed in is read as it was made, whoever it is and whatever the results", () => {
  fc.assert(
    fc.property(anybody, results, (who, exact) => {
      const made = makeHandIn(who, exact);
      const text = writeHandIn(made);
      expect(readHandIn(text)).toEqual(made);
      expect(independent.validate(JSON.parse(text)).errors).toEqual([]);
    }),
  );
});

test("every result lies in what is told of it, and all results of one part are told alike", () => {
  fc.assert(
    fc.property(anybody, results, (who, exact) => {
      makeHandIn(who, exact).results.forEach(({ test: code, low, high }, index) => {
        const { value } = exact[index] as ExactResult;
        const { step, below, from } = handInCodings[code];
        expect(low === null ? value < below : low <= value).toBe(true);
        expect(high === null ? value >= from : value < high).toBe(true);
        if (low !== null && high !== null) expect(high - low).toBe(step);
        expect([low ?? 0, high ?? 0].every((bound) => bound % step === 0)).toBe(true);
      });
    }),
  );
});

test("the ends are where hardly anybody is: under 5 and from 80 push-ups, from 15 minutes of the circuit", () => {
  expect(handInCodings["push-up"]).toEqual({ step: 5, below: 5, from: 80 });
  expect(handInCodings.endurance).toEqual({ step: 30_000, below: 120_000, from: 900_000 });
  const [rare] = makeHandIn(about, [{ ...pushUps, value: 213 }]).results;
  expect(rare).toMatchObject({ low: 80, high: null });
});

test("each thing that the page never writes is refused with its own sentence", () => {
  expect(whyNot("")).toBe("handIn.other");
  expect(whyNot("PK\u0003\u0004")).toBe("handIn.other");
  expect(whyNot("[1]")).toBe("handIn.other");
  expect(whyNot(`{"handInVersion":1,"__proto__":{}}`)).toBe("handIn.other");
  expect(whyNot(`${" ".repeat(20_000)}{"handInVersion":1}`)).toBe("handIn.other");
  expect(whyNot(`{"handInVersion":1,"a":${"[".repeat(50_000)}`)).toBe("handIn.other");
  expect(whyNot(changed((file) => (file.handInVersion = 2)))).toBe("handIn.version 2 1");
  expect(whyNot(changed((file) => (file.handInVersion = "x")))).toBe("handIn.version ? 1");
  expect(whyNot(changed((file) => (file.name = "Ember")))).toBe("handIn.more name");
  expect(whyNot(changed((_file, result) => (result.value = 23)))).toBe("handIn.more value");
  expect(whyNot(changed((file) => (file.id = "Ember")))).toBe("handIn.field id");
  expect(whyNot(changed((file) => delete file.id))).toBe("handIn.field id");
  expect(whyNot(changed((file) => (file.category = "all")))).toBe("handIn.field category");
  expect(whyNot(changed((file) => (file.ageBand = "27")))).toBe("handIn.field ageBand");
  expect(whyNot(changed((file) => (file.results = [])))).toBe("handIn.results");
  expect(whyNot(changed((file) => (file.results = Array(7).fill(0))))).toMatch(/^handIn\.(results|field)/);
  expect(whyNot(changed((_file, result) => (result.test = "sprint")))).toBe("handIn.test");
  expect(whyNot(changed((_file, result) => (result.variant = "")))).toBe("handIn.field variant");
  expect(whyNot(changed((_file, result) => (result.unit = "s")))).toBe("handIn.field unit");
  expect(whyNot(changed((_file, result) => (result.low = 21)))).toBe("handIn.field low");
  expect(whyNot(changed((_file, result) => (result.low = 85)))).toBe("handIn.field low");
  expect(whyNot(changed((_file, result) => (result.high = 30)))).toBe("handIn.field high");
  expect(whyNot(changed((_file, result) => (result.high = null)))).toBe("handIn.field high");
  expect(whyNot(changed((_file, result) => Object.assign(result, { low: null, high: null })))).toBe(
    "handIn.field high",
  );
  const twice = changed((file, result) => (file.results = [result, result]));
  expect(whyNot(twice)).toBe("handIn.twice");
});

test("rules that a test can't have are refused", () => {
  const by = (rules: string) => whyNot(changed((_file, result) => (result.rules = rules)));
  expect(by("push-up/full beatsPerRep=2 bpm=50 missesToStop=3")).toBe("taken");
  expect(by("push-up/full beatsPerRep=2 bpm=500 missesToStop=3")).toBe("handIn.field rules");
  expect(by("push-up/knee beatsPerRep=2 bpm=40 missesToStop=3")).toBe("handIn.field rules");
  expect(by("push-up/full bpm=40 beatsPerRep=2 missesToStop=3")).toBe("handIn.field rules");
  expect(by("push-up/full beatsPerRep=2 bpm=40 missesToStop=3 name=1")).toBe("handIn.field rules");
  expect(by("push-up/full beatsPerRep=2 bpm=forty missesToStop=3")).toBe("handIn.field rules");
});

test("no text at all makes the reader fail in any way but a sentence", () => {
  const lines = writeHandIn(makeHandIn(about, [pushUps]));
  fc.assert(
    fc.property(fc.nat(lines.length), fc.string({ maxLength: 6 }), fc.nat(12), (at, put, cut) => {
      whyNot(lines.slice(0, at) + put + lines.slice(at + cut));
    }),
  );
  fc.assert(fc.property(fc.json(), (text) => whyNot(text) !== "taken"));
});

test("the published schema is the one by which files are read, for programs that are not this one", () => {
  expect(published).toEqual({
    title: "Fitness results of roller derby that one person hands in for a reference table",
    ...z.toJSONSchema(handInSchema),
  });
  for (const text of [
    changed((file) => (file.name = "Ember")),
    changed((_file, result) => (result.low = 21)),
    changed((_file, result) => (result.unit = "s")),
    changed((file) => delete file.id),
  ]) {
    expect(independent.validate(JSON.parse(text)).valid).toBe(false);
  }
});

/** A file names no version of the rules of scoring by itself: a new one needs a new version of the file. */
test("the file's version goes with that of the rules of scoring", () => {
  expect([handInVersion, rulesVersion]).toEqual([1, 3]);
});
