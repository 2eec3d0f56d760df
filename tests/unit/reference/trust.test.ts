import { expect, test } from "vitest";
import { type KnownPublisher, trustIn } from "../../../electron/domain/reference-table/trust.ts";

const harbour: KnownPublisher = { publisher: "The harbour table", publicKey: "harbour", since: "2026-11-01" };
const hillside: KnownPublisher = { publisher: "Hillside", publicKey: "hillside", since: "2026-11-01" };
const known = [harbour, hillside];

test.each([
  ["The harbour table", "harbour", { kind: "known", as: harbour }],
  // A key may take another name, which is nobody else's.
  ["The port's table", "harbour", { kind: "known", as: harbour }],
  ["The valley table", "valley", { kind: "first" }],
  ["The harbour table", "valley", { kind: "other-key", as: harbour }],
  // Names are equal that people take for equal.
  ["  the HÁRBOUR  table. ", "valley", { kind: "other-key", as: harbour }],
  // A key that is known may not take the name of another.
  ["Hillside", "harbour", { kind: "other-key", as: hillside }],
])("%s with the key of %s", (publisher, publicKey, trust) => {
  expect(trustIn({ publisher, publicKey }, known)).toEqual(trust);
});
