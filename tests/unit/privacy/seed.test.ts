import { expect, test } from "vitest";
import { seedOf } from "../../../electron/api/bundle/seed.ts";

// SHA-256 of "abc" starts ba7816bf 8f01cfea 414140de 5dae2223 (FIPS 180-4); of nothing, e3b0c442 98fc1c14 9afbf4c8 996fb924,
// whose last bit is then set.
test("a seed is the first 128 bits of the SHA-256 of a text", () => {
  expect(seedOf("abc")).toEqual([0xba7816bf, 0x8f01cfea, 0x414140de, 0x5dae2223]);
  expect(seedOf("")).toEqual([0xe3b0c442, 0x98fc1c14, 0x9afbf4c8, 0x996fb925]);
});
