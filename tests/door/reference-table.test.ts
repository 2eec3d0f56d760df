import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readTable } from "../../electron/api/reference/read-table.ts";
import { handInId, makeHandIn, writeHandIn } from "../../electron/domain/reference-table/hand-in.ts";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import {
  countGroups,
  differences,
  groupsTold,
  marksIn,
  type PlainMark,
  restsOf,
} from "../checks/count-table.ts";
import { makeBundle, plain, type Told } from "../unit/reference/making.ts";
import { manyBundles } from "../unit/reference/many.ts";

const script = new URL("../../electron/merge-references.ts", import.meta.url).pathname;
let folder = "";
let key = "";
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "table-test-"));
  key = join(folder, "key.pem");
  await run("--new-key", key);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command as a terminal does. */
function run(...args: readonly string[]): Promise<Ran> {
  const env = { ...process.env, npm_lifecycle_event: "test" };
  const child = spawn(process.execPath, [script, ...args], { cwd: folder, env });
  const said = { stdout: "", stderr: "" };
  for (const name of ["stdout", "stderr"] as const) {
    child[name].setEncoding("utf8").on("data", (text: string) => {
      said[name] += text;
    });
  }
  return new Promise((resolve) => child.on("close", (code) => resolve({ code, ...said })));
}

const signed = () => ["--key", key, "--publisher", "The harbour table"];

/** A folder of its own with these files, some in subfolders. */
function folderWith(name: string, files: ReadonlyMap<string, Uint8Array>): string {
  for (const [file, bytes] of files) {
    const path = join(folder, name, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, bytes);
  }
  return join(folder, name);
}

/** 120 bundles; half of them are in two subfolders, each of which is more than a third of some groups. */
function sent(): Map<string, Uint8Array> {
  const names = (index: number) => {
    if (index % 4 === 0) return `Copper Coast/day-${index}.zip`;
    return index % 4 === 1 ? `Quiet Hills/deep/day-${index}.zip` : `lone-${index}.zip`;
  };
  return new Map([...manyBundles(120, 150)].map(({ bytes }, index) => [names(index), bytes]));
}

/** The hall of a file by the design: its subfolder, or it alone. */
const hallOf = (name: string) => (name.includes("/") ? name.slice(0, name.indexOf("/")) : name);

test("a folder becomes a signed table that a hall can read, equal to a plain count, with nobody's traces in it", async () => {
  const files = sent();
  const out = join(folder, "made", "table.zip");
  const ran = await run(folderWith("sent", files), "--out", out, ...signed(), "--valid", "3");
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  const bytes = new Uint8Array(readFileSync(out));

  const table = readTable(bytes, new Date().toISOString().slice(0, 10));
  expect(table).toMatchObject({ publisher: "The harbour table" });
  expect(Number(table.validUntil.slice(0, 4)) - Number(table.made.slice(0, 4))).toBe(3);
  expect(table.bundles).toHaveLength(120);

  const marks = [...files].flatMap(([name, zip]) => [...marksIn(zip, hallOf(name))]);
  const told = groupsTold(bytes);
  expect(told.length).toBeGreaterThan(50);
  expect(differences(told, countGroups(marks))).toEqual([]);
  // Some hall is cut, or the test would be of sums alone.
  const largest = told.find(({ name }) => name.includes("push-up/full") && name.endsWith('"all","all"]'));
  const whole = marks.filter(({ rules }) => rules === JSON.parse(largest?.name ?? "[]")[2]);
  expect(whole.length).toBeGreaterThan(largest?.marks ?? 0);

  // What a group must have, by what was sent and not by what the table says of itself.
  for (const { name, marks: count } of told) {
    const [code, variant, rules, category, age] = JSON.parse(name) as string[];
    const those = marks.filter(
      (mark) =>
        [mark.test, mark.variant, mark.rules].join() === [code, variant, rules].join() &&
        (category === "all" || mark.category === category) &&
        (age === "all" || mark.age === age),
    );
    expect(count).toBeGreaterThanOrEqual(20);
    expect(those.length).toBeGreaterThanOrEqual(count);
    expect(new Set(those.map(({ hall }) => hall)).size).toBeGreaterThanOrEqual(3);
    expect(new Set(those.map(({ low, high }) => `${low} ${high}`)).size).toBeGreaterThanOrEqual(3);
  }
  expect(restsOf(told).filter(({ rest }) => rest >= 1 && rest <= 4)).toEqual([]);

  const text = Buffer.from(bytes).toString("latin1");
  for (const word of ["Copper", "Quiet", "deep", "day-", "lone-"]) expect(text).not.toContain(word);
  const ids = [...files.values()].flatMap((zip) =>
    strFromU8(unzipSync(zip)["marks.csv"] ?? new Uint8Array())
      .split("\r\n")
      .slice(1, -1)
      .map((line) => line.slice(0, 10)),
  );
  expect(ids).toHaveLength(120 * 150);
  expect(ids.filter((id) => text.includes(id))).toEqual([]);
});

test("a subfolder is one hall however many files are in it: with two beside it there are three", async () => {
  const bundle = (seed: number) => makeBundle({ rows: plain, seed }).bytes;
  const two = new Map([
    ["one/a.zip", bundle(1)],
    ["one/b.zip", bundle(2)],
    ["one/below/c.zip", bundle(3)],
    ["d.zip", bundle(4)],
  ]);
  const out = join(folder, "two.zip");
  const ran = await run(folderWith("two", two), "--out", out, ...signed());
  expect(ran.code).toBe(2);
  expect(ran.stderr).toContain("No group has 20 results");
  const three = folderWith("three", new Map([...two, ["e.zip", bundle(5)]]));
  expect(await run(three, "--out", out, ...signed())).toMatchObject({ code: 0 });
  const [group] = groupsTold(new Uint8Array(readFileSync(out)));
  // 90 of the subfolder, 30 and 30: what is a third of all that count is 30.
  expect(group).toMatchObject({ marks: 90, halls: 3 });
});

test("a key is made once, for its owner alone, and is never written over", async () => {
  expect(statSync(key).mode & 0o777).toBe(0o600);
  const before = readFileSync(key, "utf8");
  const ran = await run("--new-key", key);
  expect(ran).toMatchObject({ code: 2 });
  expect(ran.stderr).toContain("stays as it is");
  expect(readFileSync(key, "utf8")).toBe(before);
});

test.each([
  ["no key", ["--publisher", "A"], "Say with --key"],
  ["a key that is not there", ["--key", "gone.pem", "--publisher", "A"], "can't be read"],
  ["a key that is none", ["--key", script, "--publisher", "A"], "is not a key"],
  ["no publisher", ["--key", "key.pem"], "Say with --publisher"],
  ["a publisher's name that is too long", ["--key", "key.pem", "--publisher", "x".repeat(61)], "1 to 60"],
  ["no years", ["--key", "key.pem", "--publisher", "A", "--valid", "0"], "how many years"],
])("with %s no table is made", async (_what, args, words) => {
  const some = folderWith("some", new Map([["a.zip", makeBundle({ rows: plain }).bytes]]));
  const ran = await run(some, "--out", "not.zip", ...args);
  expect(ran.code).toBe(2);
  expect(ran.stderr).toContain(words);
});

test("a table is not written among what was sent, and a sheet takes no signature", async () => {
  const some = folderWith("inside", new Map([["a.zip", makeBundle({ rows: plain }).bytes]]));
  const ran = await run(some, "--out", join(some, "table.zip"), ...signed());
  expect(ran.stderr).toContain("among the files");
  expect((await run(some, "--out", "x.csv", ...signed())).stderr).toContain("A sheet is not signed");
});

const leapRules = fingerprint("vertical", "", defaultParameters("vertical"));

/** A leap of somebody from 25 to 29 (in grains), as the page hands it in. */
function handedIn(number: number, value: number): Uint8Array {
  const id = handInId(new Uint8Array(16).fill(number));
  const result = { test: "vertical", variant: "", fingerprint: leapRules, value } as const;
  const file = makeHandIn({ id, category: "women", ageBand: "25 to 29" }, [result]);
  return new TextEncoder().encode(writeHandIn(file));
}

test("what people hand in counts in whole fives, the longest known first, as one hall together, and leaves no trace", async () => {
  const leaps = (low: number): Told => {
    return { count: 7, marks: [{ test: "vertical", variant: "", low, high: low + 1000 }] };
  };
  const bundles = [1, 2, 3].map((seed): [string, Uint8Array] => [
    `hall-${seed}.zip`,
    makeBundle({ rows: [leaps(6000), leaps(7000), leaps(8000 + seed * 1000)], seed }).bytes,
  ]);
  // 41.37 cm and the like, eight of them, in the order of their times; the last three wait.
  const handed = Array.from({ length: 8 }, (_none, index): [string, Uint8Array] => [
    index < 4 ? `post/${index}.json` : `${index}.json`,
    handedIn(index + 1, 8274 + index * 900),
  ]);
  const again: [string, Uint8Array] = ["post/9-again.json", handedIn(1, 8274)];
  const from = folderWith(
    "handed",
    new Map([...bundles, ...handed, again, ["x.json", new Uint8Array([123])]]),
  );
  handed.forEach(([name], index) => {
    utimesSync(join(from, name), 1_790_000_000 + index, 1_790_000_000 + index);
  });
  const out = join(folder, "handed.zip");
  const ran = await run(from, "--out", out, ...signed());
  expect(ran.code).toBe(3);
  expect(ran.stderr).toContain("post/9-again.json: This file was already used");
  expect(ran.stderr).toContain("x.json: This is not a file of results that somebody handed in");

  const marks = bundles.flatMap(([name, zip]) => [...marksIn(zip, name)]);
  const counting = handed.slice(0, 5).flatMap(([, bytes]): PlainMark[] => {
    const { results } = JSON.parse(strFromU8(bytes)) as { results: { low: number; high: number }[] };
    return results.map(({ low, high }) => {
      const about = { test: "vertical", variant: "", rules: leapRules, category: "women", age: "25 to 29" };
      return { hall: "by hand", ...about, quarter: "2026-Q1", low, high };
    });
  });
  const bytes = new Uint8Array(readFileSync(out));
  const told = groupsTold(bytes);
  expect(differences(told, countGroups([...marks, ...counting]))).toEqual([]);
  expect(told[0]).toMatchObject({ marks: 68, halls: 4 });
  expect(readTable(bytes, "2026-11-30").bundles).toHaveLength(3);

  const text = Buffer.from(bytes).toString("latin1");
  const ids = handed.map((_file, index) => handInId(new Uint8Array(16).fill(index + 1)));
  const exact = handed.map((_file, index) => String((8274 + index * 900) / 200));
  expect([...ids, ...exact, "post", "hand"].filter((word) => text.includes(word))).toEqual([]);
});
