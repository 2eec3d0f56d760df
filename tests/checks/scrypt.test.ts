import { expect, test } from "vitest";
import { derive, isPin, keepPin, keptPinSchema, usualCost } from "../../electron/lock/scrypt.ts";

/**
 * RFC 7914 (Percival and Josefsson, "The scrypt Password-Based Key Derivation Function", 2016), section 12: the first 16
 * of the 64 bytes of three of its vectors. The first is taken from the text; the other two are from memory.
 */
const vectors = [
  { P: "", S: "", N: 16, r: 1, p: 1, starts: "77d6576238657b203b19ca42c18a0497" },
  { P: "password", S: "NaCl", N: 1024, r: 8, p: 16, starts: "fdbabe1c9d3472007856e7190d01e9fe" },
  {
    P: "pleaseletmein",
    S: "SodiumChloride",
    N: 16_384,
    r: 8,
    p: 1,
    starts: "7023bdcb3afd7348461c06cd81fd38eb",
  },
];

test.each(vectors)(
  "RFC 7914: scrypt of “$P” and “$S”, N $N, r $r, p $p",
  async ({ P, S, N, r, p, starts }) => {
    const key = await derive(P, new TextEncoder().encode(S), 64, { N, r, p });
    expect(key.length).toBe(64);
    expect(key.toString("hex").slice(0, 32)).toBe(starts);
  },
);

test("a PIN is kept for no less than N 2^15, r 8, p 1, with 16 bytes of salt that are never the same", async () => {
  expect(usualCost.N).toBeGreaterThanOrEqual(2 ** 15);
  expect(usualCost).toMatchObject({ r: 8, p: 1 });
  const [one, two] = [await keepPin("271828"), await keepPin("271828")];
  expect(one).toMatchObject({ N: usualCost.N, r: 8, p: 1 });
  expect(Buffer.from(one.salt, "base64")).toHaveLength(16);
  expect(one.salt).not.toBe(two.salt);
  expect(one.key).not.toBe(two.key);
  expect(JSON.stringify(one)).not.toContain("271828");
  expect(await isPin("271828", one)).toBe(true);
  expect(await isPin("271828", { ...one, salt: two.salt })).toBe(false);
});

test.each([{ N: 2 ** 14 }, { N: 2 ** 21 }, { r: 1 }, { p: 2 }])(
  "a kept PIN of %o is not ours",
  async (change) => {
    const kept = await keepPin("271828", 2 ** 15);
    expect(keptPinSchema.safeParse(kept).success).toBe(true);
    expect(keptPinSchema.safeParse({ ...kept, ...change }).success).toBe(false);
  },
);

test("any other PIN is wrong, one that begins or ends alike too", async () => {
  const kept = await keepPin("271828", 2 ** 15);
  for (const pin of ["271829", "171828", "27182", "2718280", "", " 271828", "271828\0", "２７１８２８０"]) {
    expect([pin, await isPin(pin, kept)]).toEqual([pin, false]);
  }
});
