import { describe, expect, test } from "vitest";
import { readBundle } from "../../../electron/api/reference/read.ts";
import { formatVersion } from "../../../electron/bundle/contents.ts";
import type { AlikeMarks } from "../../../electron/domain/reference/bundle.ts";
import { readableVersions } from "../../../electron/domain/reference/descriptor.ts";
import { fingerprint } from "../../../electron/domain/tests/fingerprint.ts";
import { defaultParameters, rulesVersion } from "../../../electron/domain/tests/registry.ts";
import { ordinaryMs } from "../../ordinary.ts";
import { makeBundle, plain, pushUps, rehashed, tamper, textsOf, whyNot, zipOf } from "./making.ts";

const bundle = makeBundle({ rows: plain });
const rules = fingerprint("push-up", "full", defaultParameters("push-up"));

function alike(low: number | null, high: number | null, count: number): AlikeMarks {
  const test = { test: "push-up", variant: "full", fingerprint: rules } as const;
  return { ...test, category: "women", ageBand: "25 to 29", quarter: "2026-Q1", low, high, count };
}

function inOrder(marks: readonly AlikeMarks[]): AlikeMarks[] {
  return marks.toSorted((a, b) => (a.low ?? -1) - (b.low ?? -1));
}

describe("what was written is read", () => {
  test("marks come back as bounds with how many they are, by the fingerprint of their rules", () => {
    const read = readBundle(bundle.bytes);
    expect(inOrder(read.marks)).toEqual([alike(null, 20, 10), alike(20, 25, 12), alike(25, null, 8)]);
    expect(read).toMatchObject({ kind: "marks", demo: false, rehearsal: false });
    expect(read.tests.find(({ variant }) => variant === "full")?.fingerprint).toBe(rules);
  });

  test("the version that is written can be read", () => {
    expect(readableVersions).toContain(formatVersion);
  });

  test("every test comes back in its grains", () => {
    const marks = [
      pushUps(5, 10),
      { test: "agility", variant: "", low: 118, high: 120 },
      { test: "vertical", variant: "", low: 7000, high: 8000 },
      { test: "core", variant: "", low: null, high: 65 },
      { test: "endurance", variant: "", low: 305_000, high: null },
    ] as const;
    for (const mark of marks) {
      const [read] = readBundle(makeBundle({ rows: [{ count: 20, marks: [mark] }] }).bytes).marks;
      expect(read).toMatchObject({ ...mark, count: 20 });
    }
  });

  test("a bundle of the rules before, whose heights were whole millimetres, is read in the grains of now", () => {
    const rows = [{ count: 20, marks: [{ test: "vertical", variant: "", low: 7000, high: 8000 } as const] }];
    const before = tamper(makeBundle({ rows }), "protocols.json", (text) =>
      text
        .replace(`"scoringRules": ${rulesVersion}`, '"scoringRules": 1')
        .replace('"smallestStep": 0.005', '"smallestStep": 0.1'),
    );
    expect(readBundle(before).marks).toMatchObject([{ test: "vertical", low: 7000, high: 8000, count: 20 }]);
  });

  test("profiles give the same marks, and forget which belong together", () => {
    const marks = [pushUps(20, null), { test: "core", variant: "", low: null, high: 60 } as const];
    const profiles = makeBundle({
      kind: "profiles",
      rows: [
        { count: 6, marks },
        { count: 5, marks: marks.slice(0, 1) },
      ],
    });
    const read = readBundle(profiles.bytes);
    expect(read.kind).toBe("profiles");
    expect(read.marks.map(({ test, low, high, count }) => [test, low, high, count])).toEqual(
      expect.arrayContaining([
        ["push-up", 20, null, 11],
        ["core", null, 60, 6],
      ]),
    );
    expect(read.marks).toHaveLength(2);
  });

  test("packed anew by another program, deflated, it is the same bundle", () => {
    expect(readBundle(zipOf(textsOf(bundle), 6))).toEqual(readBundle(bundle.bytes));
  });
});

/** The files with one more, or one less. */
function filesWith(change: (texts: Map<string, string>) => void): Uint8Array {
  const texts = textsOf(bundle);
  change(texts);
  return zipOf(texts);
}

function descriptorWith(change: (descriptor: Record<string, unknown>) => void): Uint8Array {
  return tamper(bundle, "datapackage.json", (text) => {
    const descriptor = JSON.parse(text) as Record<string, unknown>;
    change(descriptor);
    return JSON.stringify(descriptor);
  });
}

const deep = `${"[".repeat(200_000)}${"]".repeat(200_000)}`;

describe("a bundle as a whole is refused", () => {
  test.each([
    ["with a file more", filesWith((files) => files.set("notes.txt", "x")), "reference.stray"],
    ["with both kinds of rows", filesWith((files) => files.set("profiles.csv", "id\r\n")), "reference.stray"],
    ["without its summary", filesWith((files) => files.delete("summary.csv")), "reference.missing"],
    ["without its descriptor", filesWith((files) => files.delete("datapackage.json")), "reference.missing"],
    ["of another version", descriptorWith((all) => (all.formatVersion = 3)), "reference.version"],
    [
      "of a version that is no number",
      descriptorWith((all) => (all.formatVersion = {})),
      "reference.version",
    ],
    [
      "of another profile",
      descriptorWith((all) => (all.profile = "tabular-data-package")),
      "reference.profile",
    ],
    ["that is a list", tamper(bundle, "datapackage.json", () => "[]"), "reference.profile"],
    ["without resources", descriptorWith((all) => (all.resources = [])), "reference.missing"],
    [
      "that describes a file outside",
      descriptorWith(
        (all) => (all.resources = [{ path: "../../x", bytes: 1, hash: `sha256:${"0".repeat(64)}` }]),
      ),
      "reference.describes",
    ],
    [
      "that describes a file twice",
      descriptorWith(
        (all) => (all.resources = [...(all.resources as unknown[]), (all.resources as unknown[])[0]]),
      ),
      "reference.unreadable",
    ],
    [
      "whose hash is of another kind",
      descriptorWith((all) => withHash(all, "md5:0")),
      "reference.unreadable",
    ],
    [
      "whose rows are others than were hashed",
      filesWith((files) => files.set("marks.csv", (files.get("marks.csv") ?? "").replace("20", "25"))),
      "reference.changed",
    ],
    [
      "whose hash is wrong",
      descriptorWith((all) => withHash(all, `sha256:${"0".repeat(64)}`)),
      "reference.changed",
    ],
    ["whose codebook was changed", filesWith((files) => files.set("codebook.md", "x")), "reference.changed"],
  ])("%s", (_what, zip, why) => {
    expect(whyNot(zip)).toBe(why);
  });

  function withHash(descriptor: Record<string, unknown>, hash: string): void {
    for (const resource of descriptor.resources as { hash: string }[]) resource.hash = hash;
  }

  test.each(["__proto__", "constructor", "prototype"])("with the key %s anywhere in its JSON", (key) => {
    const poisoned = (text: string) => text.replace("{", `{ "${key}": { "isAdmin": true }, `);
    expect(whyNot(tamper(bundle, "protocols.json", poisoned))).toBe("reference.unreadable");
    expect(whyNot(tamper(bundle, "datapackage.json", poisoned))).toBe("reference.unreadable");
    expect(({} as Record<string, unknown>).isAdmin).toBeUndefined();
  });

  test.each([
    ["deep", deep],
    ["deep behind a quotation mark", `{"a\\"[": ${deep}}`],
    ["long", JSON.stringify("x".repeat(1024 * 1024))],
    ["full of quotation marks that don't end", `"${'\\"'.repeat(400_000)}`],
    ["cut short", '{"profile": "data-package", '],
    ["empty", ""],
  ])("with JSON that is %s", async (_what, text) => {
    const took = await ordinaryMs(() => {
      expect(whyNot(tamper(bundle, "datapackage.json", () => text))).toBe("reference.unreadable");
      expect(whyNot(tamper(bundle, "protocols.json", () => text))).toBe("reference.unreadable");
    });
    expect(took).toBeLessThan(1000);
  });

  test("with bytes that are no text", () => {
    const files = rehashed(textsOf(bundle));
    const zip = zipOf(files);
    const at = Buffer.from(zip).indexOf("Five field tests");
    zip[at] = 0xff;
    expect(whyNot(zip)).toBe("reference.damaged");
  });
});

describe("rules that can't be trusted are refused", () => {
  const inProtocols = (from: string, to: string) =>
    tamper(bundle, "protocols.json", (text) => {
      expect(text).toContain(from);
      return text.replace(from, to);
    });
  test.each([
    ["an unknown test", '"test": "push-up"', '"test": "bench-press"', "reference.unknownTest"],
    ["a test twice", '"test": "agility"', '"test": "push-up"', "reference.unreadable"],
    ["parameters that don't give the fingerprint", '"bpm": 40', '"bpm": 50', "reference.contradicts"],
    ["a fingerprint that is another", "bpm=40", "bpm=50", "reference.contradicts"],
    ["parameters that nobody can hold", '"bpm": 40', '"bpm": 4000000', "reference.unreadable"],
    ["a parameter more", '"bpm": 40', '"bpm": 40, "extra": 1', "reference.unreadable"],
    ["another unit", '"unit": "reps"', '"unit": "s"', "reference.unreadable"],
    [
      "another way of scoring",
      `"scoringRules": ${rulesVersion}`,
      `"scoringRules": ${rulesVersion + 1}`,
      "reference.scoring",
    ],
    ["a finer step than any", '"smallestStep": 0.005', '"smallestStep": 0.001', "reference.unreadable"],
    ["an unknown variant", '"variant": "full"', '"variant": "half"', "reference.unreadable"],
  ])("%s", (_what, from, to, why) => {
    expect(whyNot(inProtocols(from, to))).toBe(why);
  });
});

describe("rows that no bundle has are refused by line and column", () => {
  const header = "id,test,variant,age_band,category,league_size,quarter,mark_low,mark_high,unit";
  const good = ["push-up", "full", "25 to 29", "women", "15 to 29", "2026-Q1", "20", "25", "reps"];

  function rowsWith(change: readonly string[], id = "bcdfghjkmn"): string {
    const ids = ["b", "c", "d", "f", "g", "h"].map((letter) => letter.repeat(10));
    const rows = ids.map((each, index) => [index === 2 ? id : each, ...change].join());
    return `${[header, ...rows].join("\r\n")}\r\n`;
  }

  function refusal(text: string): unknown {
    try {
      readBundle(tamper(bundle, "marks.csv", () => text));
    } catch (error) {
      return (error as { sentence?: { key: string; values?: object } }).sentence;
    }
    return "taken";
  }

  test("as they are written they are taken", () => {
    expect(refusal(rowsWith(good))).toBe("taken");
  });

  test.each([
    ["test", 0, "bench-press"],
    ["test", 0, "__proto__"],
    ["variant", 1, "half"],
    ["age_band", 2, "26 to 30"],
    ["age_band", 2, "25 to 34"],
    ["age_band", 2, "025 to 029"],
    ["age_band", 2, "27"],
    ["category", 3, "woman"],
    ["category", 3, "constructor"],
    ["league_size", 4, "17"],
    ["quarter", 5, "2026-03-14"],
    ["mark_low", 6, "NaN"],
    ["mark_low", 6, "Infinity"],
    ["mark_low", 6, "-5"],
    ["mark_low", 6, "1e1"],
    ["mark_low", 6, "0x14"],
    ["mark_low", 6, "20.5"],
    ["mark_low", 6, " 20"],
    ["mark_low", 6, "99999999"],
    ["mark_low", 6, "=1+1"],
    ["mark_high", 7, "20"],
    ["mark_high", 7, "15"],
    ["mark_high", 7, "two"],
    ["unit", 8, "s"],
  ])("%s of column %d can't be %j", (column, at, value) => {
    const row = good.with(at, value);
    expect(refusal(rowsWith(row))).toEqual({
      key: "reference.row",
      values: { name: "marks.csv", line: 2, column },
    });
  });

  test("finer than any bundle tells is refused", () => {
    const leap = ["vertical", "", "25 to 29", "women", "15 to 29", "2026-Q1", "35.1", "35.2", "cm"];
    expect(refusal(rowsWith(leap))).toMatchObject({ values: { column: "mark_low" } });
    expect(refusal(rowsWith(leap.with(6, "35").with(7, "40")))).toBe("taken");
  });

  test("a mark without any bound says nothing", () => {
    expect(refusal(rowsWith(good.with(6, "").with(7, "")))).toMatchObject({ values: { column: "mark_low" } });
  });

  test.each(["AAAAAAAAAA", "bcdf", "bbbbbbbbbb", "bcdfghjkmn0"])("an id can't be %s", (id) => {
    expect(refusal(rowsWith(good, id))).toMatchObject({ values: { line: 4, column: "id" } });
  });

  test.each([
    ["a column less", (text: string) => text.replace(",unit", "")],
    ["a column more", (text: string) => text.replace(",unit", ",unit,name")],
    ["columns in another order", (text: string) => text.replace("id,test", "test,id")],
    ["no header", (text: string) => text.replace(`${header}\r\n`, "")],
  ])("%s", (_what, change) => {
    expect(refusal(change(rowsWith(good)))).toMatchObject({ key: "reference.columns" });
  });

  test("a row of other length, other line ends, a quotation mark that never ends, and no row at all", () => {
    expect(refusal(rowsWith([...good, "more"]))).toMatchObject({ key: "reference.row" });
    expect(refusal(rowsWith(good).replaceAll("\r\n", "\n"))).toMatchObject({ key: "reference.unreadable" });
    expect(refusal(rowsWith(good.with(3, '"women')))).toMatchObject({ key: "reference.unreadable" });
    expect(refusal(`${header}\r\n`)).toMatchObject({ key: "reference.empty" });
  });

  test("too many rows", () => {
    const row = `,${good.join()}`;
    const id = (index: number) =>
      [...String(index).padStart(10, "0")].map((digit) => "bcdfghjkmn"[Number(digit)]);
    const rows = Array.from({ length: 20_001 }, (_, index) => `${id(index).join("")}${row}`);
    expect(refusal(`${[header, ...rows].join("\r\n")}\r\n`)).toMatchObject({ key: "reference.tooMany" });
  });

  test.each([
    ["rows", `${header}\r\n${"\r\n".repeat(1_900_000)}`, "reference.tooMany"],
    ["columns", `${header}\r\n${",".repeat(3_900_000)}\r\n`, "reference.row"],
    ["a header", `${"id,".repeat(1_300_000)}\r\n`, "reference.columns"],
    ["a cell", `${header}\r\n"${"x".repeat(3_900_000)}"\r\n`, "reference.row"],
  ])("%s as large as they can be cost little", async (_what, text, why) => {
    const zip = tamper(bundle, "marks.csv", () => text);
    const before = process.memoryUsage().rss;
    expect(await ordinaryMs(() => expect(whyNot(zip)).toBe(why))).toBeLessThan(3000);
    expect(process.memoryUsage().rss - before).toBeLessThan(400 * 1024 * 1024);
  });

  test("a row that fewer than five athletes share gives somebody away, and is not taken", () => {
    expect(whyNot(makeBundle({ rows: [...plain, { count: 4, marks: [pushUps(30, 35)] }] }).bytes)).toBe(
      "reference.exposed",
    );
  });
});
