import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bundlesAt, countPercentiles } from "../checks/count-percentiles.ts";
import { gigabyteOfZeros, rawZip } from "../unit/reference/hostile-zips.ts";
import { makeBundle, plain, pushUps, tamper, textsOf, zipOf } from "../unit/reference/making.ts";
import { manyBundles } from "../unit/reference/many.ts";

const script = new URL("../../electron/merge-references.ts", import.meta.url).pathname;
let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "merge-test-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A folder of its own with these files. */
function folderWith(name: string, files: Readonly<Record<string, Uint8Array | string>>): string {
  const path = join(folder, name);
  mkdirSync(path);
  for (const [file, bytes] of Object.entries(files)) writeFileSync(join(path, file), bytes);
  return path;
}

interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command as a terminal does. */
function run(...args: readonly string[]): Promise<Ran> {
  const temporary = join(folder, "temporary");
  mkdirSync(temporary, { recursive: true });
  const env = { ...process.env, TMPDIR: temporary, npm_lifecycle_event: "test" };
  const child = spawn(process.execPath, [script, ...args], { cwd: folder, env });
  const said = { stdout: "", stderr: "" };
  for (const name of ["stdout", "stderr"] as const) {
    child[name].setEncoding("utf8").on("data", (text: string) => {
      said[name] += text;
    });
  }
  return new Promise((resolve) => child.on("close", (code) => resolve({ code, ...said })));
}

function linesOf(path: string): string[] {
  return readFileSync(path, "utf8").split("\r\n").slice(0, -1);
}

describe("merging a folder", () => {
  test("gives the percentiles that an independent counter gives, and leaves nothing behind", async () => {
    const files = Object.fromEntries(
      [...manyBundles(60, 150)].map(({ bytes }, index) => [`${index}.zip`, bytes]),
    );
    const bundles = folderWith("many", files);
    const out = join(folder, "made", "many.csv");
    const ran = await run(bundles, "--out", out);
    expect(ran).toMatchObject({ code: 0, stderr: "" });
    expect(ran.stdout).toContain("60 files with 9000 results");
    const [header, ...lines] = linesOf(out);
    expect(header).toBe(
      "test,variant,fingerprint,category,age_band,percentile,low,high,unit,better,n,bundles",
    );
    const expected = countPercentiles(bundlesAt(Object.keys(files).map((name) => join(bundles, name))));
    expect(expected.length).toBeGreaterThan(7 * 30);
    expect(lines.toSorted()).toEqual(expected.sort());
    expect(readdirSync(join(folder, "temporary"))).toEqual([]);
    expect(readdirSync(join(folder, "made"))).toEqual(["many.csv"]);
  });

  test("worked out by hand: ten below 20, twelve from 20 to 25, eight from 25 on, from two bundles", async () => {
    const bundles = folderWith("two", {
      "a.zip": makeBundle({ rows: plain.slice(0, 2) }).bytes,
      "b.zip": makeBundle({ rows: plain.slice(2), seed: 2 }).bytes,
    });
    const out = join(folder, "two.csv");
    expect(await run(bundles, `--out=${out}`)).toMatchObject({ code: 0 });
    // 29 × 5, 10, 25, 50, 75, 90 and 95 in a hundred: places 1.45, 2.9, 7.25, 14.5, 21.75, 26.1, 27.55 from 0. Ten marks are
    // in the lowest part (0 to 9), twelve in the middle (10 to 21), eight in the highest; 21.75 lies between two parts.
    const bounds = [",20", ",20", ",20", "20,25", "20,", "25,", "25,"];
    const rules = "push-up/full beatsPerRep=2 bpm=40 missesToStop=3";
    expect(linesOf(out).slice(1)).toEqual(
      [5, 10, 25, 50, 75, 90, 95].map(
        (p, index) => `push-up,full,${rules},women,25 to 29,${p},${bounds[index]},reps,higher,30,2`,
      ),
    );
  });

  test("keeps back what can't be taken, each with its reason, and merges the others", async () => {
    const good = makeBundle({ rows: plain });
    const bundles = folderWith("mixed", {
      "good.zip": good.bytes,
      "again.zip": zipOf(textsOf(good), 6),
      "bomb.zip": rawZip([{ name: "marks.csv", data: gigabyteOfZeros(), bytes: 1e7, crc: 0, method: 8 }]),
      "demo.zip": makeBundle({ rows: plain, demo: true, seed: 3 }).bytes,
      "slip.zip": rawZip([{ name: "../../x.csv", data: new Uint8Array(), bytes: 0, crc: 0, method: 0 }]),
      "tried.zip": makeBundle({ rows: plain, rehearsal: true, seed: 4 }).bytes,
      "wrong.zip": tamper(good, "marks.csv", (text) => text.replace("women", "nobody")),
      "notes.txt": "not a bundle, and not looked at",
    });
    mkdirSync(join(bundles, "folder.zip"));
    const out = join(folder, "mixed.csv");
    const ran = await run(bundles, "--out", out);
    expect(ran.code).toBe(3);
    expect(ran.stdout).toContain("Files not used: 7");
    const said = ran.stderr.trimEnd().split("\n");
    expect(said.map((line) => line.split(":")[0])).toEqual(
      ["bomb", "demo", "folder", "good", "slip", "tried", "wrong"].map((name) => `${name}.zip`),
    );
    expect(said[3]).toContain("This file was already used, under the name again.zip");
    expect(linesOf(out)).toHaveLength(8);
  });

  test("never puts different rules, categories or ages together, and leaves out groups of nineteen", async () => {
    const nineteen = { count: 19, marks: [pushUps(20, 25)] };
    const bundles = folderWith("apart", {
      "a.zip": makeBundle({ rows: [nineteen] }).bytes,
      "b.zip": makeBundle({ rows: [nineteen], bpm: 50 }).bytes,
      "c.zip": makeBundle({ rows: [{ ...nineteen, category: "men" }] }).bytes,
      "d.zip": makeBundle({ rows: [{ ...nineteen, ageBand: "30 to 34" }] }).bytes,
    });
    const out = join(folder, "apart.csv");
    expect(await run(bundles, "--out", out)).toMatchObject({ code: 0 });
    expect(linesOf(out)).toHaveLength(1);
  });

  test.each([
    ["nothing", [], "Say which folder"],
    ["no sheet", ["."], "Say with --out"],
    ["an option that nobody knows", [".", "--out", "x.csv", "--fast"], "--fast"],
    ["two folders", [".", "..", "--out", "x.csv"], "Only one folder"],
    ["a folder that is not there", ["gone", "--out", "x.csv"], "There is no folder"],
    ["a folder to write to", [".", "--out", "."], "is a folder"],
  ])("of %s there is nothing to merge", async (_what, args, words) => {
    const ran = await run(...args);
    expect(ran.code).toBe(2);
    expect(ran.stderr).toContain(words);
    expect(ran.stderr).toContain("Usage:");
  });

  test("an empty folder, and one of which nothing can be taken, write nothing", async () => {
    const empty = folderWith("empty", {});
    const out = join(folder, "nothing.csv");
    expect(await run(empty, "--out", out)).toMatchObject({ code: 2 });
    const bad = folderWith("bad", { "x.zip": "PK" });
    expect(await run(bad, "--out", out)).toMatchObject({ code: 2 });
    expect(readdirSync(folder)).not.toContain("nothing.csv");
  });
});
