import { expect, test } from "vitest";
import { readZip } from "../../../electron/api/reference/zip.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { ordinaryMs } from "../../ordinary.ts";
import { gigabyteOfZeros, honest, rawZip } from "./hostile-zips.ts";

const known = (name: string) => ["a.csv", "b.csv", "c.csv"].includes(name);

/** What a zip is refused with. */
function whyNot(zip: Uint8Array): string {
  try {
    readZip(zip, known);
  } catch (error) {
    if (error instanceof Refusal) return error.sentence.key;
    throw error;
  }
  return "taken";
}

test("plain and deflated entries come out as they went in, an empty one too", () => {
  const text = "marks,".repeat(1000);
  const files = readZip(
    rawZip([honest("a.csv", text, 8), honest("b.csv", "x"), honest("c.csv", "", 8)]),
    known,
  );
  expect([...files].map(([name, bytes]) => [name, Buffer.from(bytes).toString()])).toEqual([
    ["a.csv", text],
    ["b.csv", "x"],
    ["c.csv", ""],
  ]);
});

test.each(["../a.csv", "..\\a.csv", "x/../../a.csv", "/etc/passwd", "\\a.csv", "C:a.csv", "c:/a.csv", ".."])(
  "a name that leads outside, %s, is refused whatever else is in there",
  (name) => {
    expect(whyNot(rawZip([honest("b.csv", "x"), honest(name, "x")]))).toBe("reference.outside");
  },
);

test.each(["d.csv", "folder/a.csv", "folder/", "A.CSV", "a.csv\0.txt", "", "__MACOSX/a.csv"])(
  "a name that no bundle has, %j, is refused",
  (name) => {
    expect(whyNot(rawZip([honest(name, "x")]))).toBe("reference.stray");
  },
);

test("a name stands once, and the same in both headers", () => {
  expect(whyNot(rawZip([honest("a.csv", "x"), honest("a.csv", "y")]))).toBe("reference.damaged");
  const zip = rawZip([honest("a.csv", "x")]);
  zip.set(Buffer.from("b.csv"), 30);
  expect(whyNot(zip)).toBe("reference.damaged");
});

/** By how much memory grows while something is done, and how long it takes on an ordinary machine. */
async function cost(work: () => void): Promise<{ ms: number; megabytes: number }> {
  const before = process.memoryUsage().rss;
  work();
  const megabytes = (process.memoryUsage().rss - before) / 1024 / 1024;
  return { ms: await ordinaryMs(work), megabytes };
}

test("a gigabyte that says so is not unpacked at all", async () => {
  const data = gigabyteOfZeros();
  expect(data.length).toBeLessThan(1.1 * 1024 * 1024);
  const zip = rawZip([{ name: "a.csv", data, bytes: 1024 ** 3, crc: 0, method: 8 }]);
  const { ms, megabytes } = await cost(() => expect(whyNot(zip)).toBe("reference.swells"));
  expect(ms).toBeLessThan(200);
  expect(megabytes).toBeLessThan(32);
});

test("a gigabyte that says it is small is left at the size that it said", async () => {
  const zip = rawZip([{ name: "a.csv", data: gigabyteOfZeros(), bytes: 4_000_000, crc: 0, method: 8 }]);
  const { ms, megabytes } = await cost(() => expect(whyNot(zip)).toBe("reference.swells"));
  expect(ms).toBeLessThan(500);
  expect(megabytes).toBeLessThan(32);
});

test("few kilobytes that many entries share are no gigabyte", () => {
  const data = new Uint8Array(Buffer.from(gigabyteOfZeros()).subarray(0, 16_000));
  const shared = Array.from({ length: 1000 }, (_, index) => {
    return {
      ...honest(`${index}.csv`, ""),
      data: index === 0 ? data : new Uint8Array(),
      bytes: 4_000_000,
      at: 0,
    };
  });
  expect(whyNot(rawZip(shared))).toBe("reference.swells");
  const two = ["a.csv", "b.csv"].map((name) => ({ ...honest(name, "1234567890"), at: 0 }));
  expect(whyNot(rawZip(two))).toBe("reference.damaged");
});

test.each([
  ["nothing", new Uint8Array(), "reference.notZip"],
  ["a picture", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 1, 2, 3, 4), "reference.notZip"],
  ["two letters", Uint8Array.of(0x50, 0x4b), "reference.notZip"],
  ["an ending alone, where something should be", rawZip([]).subarray(0, 21), "reference.damaged"],
  ["more than the limit", new Uint8Array(20 * 1024 * 1024 + 1), "reference.tooBig"],
])("%s is no zip", (_what, bytes, why) => {
  expect(whyNot(bytes)).toBe(why);
});

test("what is cut short anywhere is refused", () => {
  const zip = rawZip([honest("a.csv", "x".repeat(100), 8), honest("b.csv", "y")]);
  for (let length = 0; length < zip.length; length += 1)
    expect(whyNot(zip.subarray(0, length))).not.toBe("taken");
});

test.each([
  ["a password", { flags: 1 }, "reference.locked"],
  ["a wrong checksum", { crc: 1 }, "reference.damaged"],
  ["a wrong size", { bytes: 7 }, "reference.damaged"],
  ["another way of packing", { method: 14 as 8 }, "reference.damaged"],
  ["bytes that are not deflated", { method: 8 as const }, "reference.damaged"],
  ["a beginning beyond the end", { at: 4_000_000_000 }, "reference.damaged"],
])("an entry with %s is refused", (_what, lie, why) => {
  expect(whyNot(rawZip([{ ...honest("a.csv", "something"), ...lie }]))).toBe(why);
});
