import fc from "fast-check";
import { expect, test } from "vitest";
import { readBundle } from "../../../electron/api/reference/read.ts";
import type { Bundle } from "../../../electron/domain/reference/bundle.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { makeBundle, plain, pushUps, rehashed, textsOf, zipOf } from "./making.ts";

const marks = makeBundle({ rows: plain });
const profiles = makeBundle({
  kind: "profiles",
  rows: [{ count: 9, marks: [pushUps(20, null), { test: "core", variant: "", low: null, high: 60 }] }],
});
const bundles = [
  { zip: marks.bytes, texts: textsOf(marks) },
  { zip: zipOf(textsOf(marks), 6), texts: textsOf(marks) },
  { zip: profiles.bytes, texts: textsOf(profiles) },
] as const;
const which = fc.constantFrom(...bundles);

/** What is read, or the sentence of the refusal; any other error is thrown on. */
function outcome(zip: Uint8Array): Bundle | string {
  try {
    return readBundle(zip);
  } catch (error) {
    if (error instanceof Refusal) return error.sentence.key;
    throw error;
  }
}

/** Bytes changed, taken out, or put in, somewhere. */
const spoil = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  gone: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 40 })),
  put: fc.uint8Array({ maxLength: 8 }),
});

function spoilt(
  bytes: Uint8Array,
  { at, gone, put }: { at: number; gone: number; put: Uint8Array },
): Uint8Array {
  const from = Math.floor(at * bytes.length);
  return Uint8Array.from([...bytes.subarray(0, from), ...put, ...bytes.subarray(from + gone)]);
}

test("a file that was spoilt is refused with a sentence, or says exactly what it said", () => {
  fc.assert(
    fc.property(which, fc.array(spoil, { minLength: 1, maxLength: 4 }), ({ zip }, spoils) => {
      const read = outcome(spoils.reduce(spoilt, zip));
      if (typeof read === "string") expect(read).toMatch(/^reference\./);
      else expect(read).toEqual(readBundle(zip));
    }),
    { numRuns: 1500 },
  );
});

test("so is a file of which single bits were flipped, one after another", () => {
  const { zip } = bundles[1];
  const whole = readBundle(zip);
  for (let at = 0; at < zip.length; at += 1) {
    const flipped = Uint8Array.from(zip);
    flipped[at] = (flipped[at] ?? 0) ^ (1 << (at % 8));
    const read = outcome(flipped);
    if (typeof read !== "string") expect(read).toEqual(whole);
  }
});

const signs = fc.constantFrom(
  ...['"', ",", "\r\n", "{", "}", "[", "]", ":", "0", "-1", "1e999", "null", "true", "\\u0000", "__proto__"],
  ...["../", "\uFEFF", "push-up", "full", "women", "not told", "NaN", "25", " "],
);
const edit = fc.record({
  name: fc.constantFrom("marks.csv", "profiles.csv", "protocols.json", "datapackage.json", "summary.csv"),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  gone: fc.integer({ min: 0, max: 12 }),
  put: fc.oneof(signs, fc.string({ maxLength: 4 })),
});

test("one that was rewritten by somebody who makes the hashes fit is refused, or holds nothing but bounds that hold", () => {
  fc.assert(
    fc.property(which, fc.array(edit, { minLength: 1, maxLength: 3 }), ({ texts }, edits) => {
      const changed = new Map(texts);
      for (const { name, at, gone, put } of edits) {
        const text = changed.get(name);
        if (text === undefined) continue;
        const from = Math.floor(at * text.length);
        changed.set(name, text.slice(0, from) + put + text.slice(from + gone));
      }
      const read = outcome(zipOf(fitting(changed)));
      if (typeof read !== "string") expectSound(read);
    }),
    { numRuns: 1500 },
  );
  expect(({} as Record<string, unknown>).isAdmin).toBeUndefined();
});

/** Hashes fit where the descriptor can still be read. */
function fitting(texts: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  try {
    return rehashed(texts);
  } catch {
    return texts;
  }
}

function expectSound({ marks: told, tests }: Bundle): void {
  expect(told.length).toBeGreaterThan(0);
  for (const { low, high, count, test: code, variant, fingerprint } of told) {
    expect(low ?? high).not.toBeNull();
    expect((low ?? -1) < (high ?? Number.POSITIVE_INFINITY)).toBe(true);
    for (const bound of [low, high]) expect(bound === null || Number.isSafeInteger(bound)).toBe(true);
    expect(count).toBeGreaterThanOrEqual(1);
    expect(tests).toContainEqual({ test: code, variant, fingerprint });
  }
  expect(told.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThanOrEqual(5);
}
