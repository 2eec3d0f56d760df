import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { newKey, readKey } from "../../electron/api/reference/signature.ts";
import { merge } from "../../electron/reference/merge.ts";
import { NothingToMerge } from "../../electron/reference/nothing.ts";
import { manyBundles } from "../unit/reference/many.ts";

const key = readKey(newKey());
let folder = "";
let sent = "";
let kept = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "kept-test-"));
  sent = join(folder, "sent");
  kept = join(folder, "kept");
  mkdirSync(sent);
  [...manyBundles(30, 150)].forEach(({ bytes }, index) => {
    writeFileSync(join(sent, `${10 + index}.zip`), bytes);
  });
  writeFileSync(join(sent, "bad.zip"), "PK");
  // A whole second, which can be set again.
  utimesSync(join(sent, "12.zip"), 1_790_000_000, 1_790_000_000);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The table's bytes, and what was kept back, by name. */
async function table(from: string | null): Promise<{ bytes: Buffer; keptBack: string[] }> {
  if (key === undefined) throw new Error("No key was made.");
  const out = join(folder, "table.zip");
  const signing = { key, publisher: "The harbour table", made: "2026-11-30", validUntil: "2028-11-30" };
  const keptBack: string[] = [];
  await merge(
    { folder: sent, out, kept: from, signing, page: null },
    { keptBack: (name) => keptBack.push(name), progress: () => undefined },
  );
  return { bytes: readFileSync(out), keptBack };
}

const filesBelow = (path: string) =>
  readdirSync(path, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".parquet"));

test("what is kept gives the same table as reading everything, and files that are the same are not read again", async () => {
  const plain = await table(null);
  expect(plain.keptBack).toEqual(["bad.zip"]);
  expect(await table(kept)).toEqual(plain);
  const files = filesBelow(kept);
  expect(files).toContain(join("files", "1.parquet"));
  expect(files).toContain(join("quarter=2026-Q1", "1.parquet"));
  expect(readdirSync(kept)).not.toContain("working");
  // Its name, size and time stay, and its content is gone: nobody looks.
  const path = join(sent, "12.zip");
  copyFileSync(path, join(folder, "12.zip"));
  writeFileSync(path, Buffer.alloc(statSync(path).size));
  utimesSync(path, 1_790_000_000, 1_790_000_000);
  const hidden = await table(kept);
  expect(hidden.keptBack).toEqual(["bad.zip"]);
  expect(filesBelow(kept)).toEqual(files);
  copyFileSync(join(folder, "12.zip"), path);
});

test("new files are added in a batch of their own, and the result is that of a run without", async () => {
  [...manyBundles(34, 120)].slice(0, 4).forEach(({ bytes }, index) => {
    writeFileSync(join(sent, `new-${index}.zip`), bytes);
  });
  expect(await table(kept)).toEqual(await table(null));
  expect(filesBelow(kept)).toContain(join("files", "2.parquet"));
});

test("a file that is taken out is out, and one that is moved to another hall counts there", async () => {
  rmSync(join(sent, "15.zip"));
  mkdirSync(join(sent, "Copper Coast"));
  for (const name of ["16.zip", "17.zip", "18.zip"]) {
    renameSync(join(sent, name), join(sent, "Copper Coast", name));
  }
  expect(await table(kept)).toEqual(await table(null));
});

test("what a killed process left of a batch is taken away, and nothing counts twice", async () => {
  const before = await table(kept);
  // Killed while it wrote a batch: the marks of two quarters are there, one of a third is being written, no list of files.
  copyFileSync(join(kept, "quarter=2026-Q1", "1.parquet"), join(kept, "quarter=2026-Q1", "9.parquet"));
  copyFileSync(join(kept, "quarter=2026", "1.parquet"), join(kept, "quarter=2026", "9.parquet"));
  writeFileSync(join(kept, "quarter=2025", "9.parquet.part"), "PAR1");
  mkdirSync(join(kept, "working"));
  writeFileSync(join(kept, "working", "marks.duckdb"), "half");
  writeFileSync(join(kept, "in-use"), "999999999");
  expect(await table(kept)).toEqual(before);
  expect(filesBelow(kept).filter((name) => name.includes("9.parquet"))).toEqual([]);
  expect(existsSync(join(kept, "quarter=2025", "9.parquet.part"))).toBe(false);
  expect(existsSync(join(kept, "in-use"))).toBe(false);
});

test("two runs at once don't share what is kept", async () => {
  // The number of a process that runs: this one's parent.
  writeFileSync(join(kept, "in-use"), String(process.ppid));
  await expect(table(kept)).rejects.toThrow(NothingToMerge);
  rmSync(join(kept, "in-use"));
});

test("many batches are made one, and a process killed before the old ones were gone counts nothing twice", async () => {
  const many = join(folder, "many");
  const bundles = [...manyBundles(60, 90)].slice(40, 50);
  for (const [index, { bytes }] of bundles.entries()) {
    writeFileSync(join(sent, `later-${index}.zip`), bytes);
    await table(many);
    if (index === 7) cpSync(many, join(folder, "before"), { recursive: true });
  }
  const files = filesBelow(join(many, "files"));
  expect(files).toEqual(["10.parquet", "11.parquet"]);
  const plain = await table(null);
  expect(await table(many)).toEqual(plain);
  // Everything that the one batch stands for is there again.
  cpSync(join(folder, "before"), many, { recursive: true });
  expect(filesBelow(join(many, "files"))).toHaveLength(8 + 2);
  expect(await table(many)).toEqual(plain);
  expect(filesBelow(join(many, "files"))).toEqual(files);
});

test("a kept file that is not as it was written, or is gone, is named, and deleting the folder mends it", async () => {
  const plain = await table(null);
  for (const inside of ["files", "kinds", "quarter=2026-Q1"]) {
    const broken = join(folder, `broken-${inside}`);
    expect(await table(broken)).toEqual(plain);
    const file = join(broken, inside, "1.parquet");
    const bytes = readFileSync(file);
    const middle = Math.floor(bytes.length / 2);
    // One bit: the engine would not see it, or would tell of it in its own words.
    bytes.writeUInt8(bytes.readUInt8(middle) ^ 1, middle);
    writeFileSync(file, bytes);
    await expect(table(broken)).rejects.toMatchObject({
      sentence: { key: "references.damaged", values: { file, path: broken } },
    });
    if (inside !== "files") {
      rmSync(file);
      await expect(table(broken)).rejects.toThrow(NothingToMerge);
    }
    rmSync(broken, { recursive: true });
    expect(await table(broken)).toEqual(plain);
  }
});

test("what is kept has a folder for nothing else, since it may be deleted at any time", async () => {
  const mine = join(folder, "mine");
  mkdirSync(mine);
  writeFileSync(join(mine, "last year's table.zip"), "mine");
  await expect(table(mine)).rejects.toMatchObject({
    sentence: { key: "references.notOurs", values: { path: mine, name: "last year's table.zip" } },
  });
  expect(readdirSync(mine)).toEqual(["last year's table.zip"]);
  rmSync(join(mine, "last year's table.zip"));
  await table(mine);
  // Looking into it leaves what the system leaves.
  writeFileSync(join(mine, ".DS_Store"), "");
  await table(mine);
});
