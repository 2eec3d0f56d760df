import { execFileSync } from "node:child_process";
import { mkdtemp, rm, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { largestSheet } from "../../../electron/shell/bridge/bridge-types.ts";
import { readSheet } from "../../../electron/shell/bridge/read-sheet.ts";

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "tapeline-sheet-"));
});
afterEach(() => rm(folder, { recursive: true }));

test("a sheet comes with its bare name and its bytes", async () => {
  await writeFile(join(folder, "roster.csv"), "league,name\n");
  const bytes = new TextEncoder().encode("league,name\n");
  expect(await readSheet(join(folder, "roster.csv"))).toEqual({ name: "roster.csv", bytes });
});

test("the largest sheet is read and one byte more is not", async () => {
  const file = join(folder, "large.csv");
  await writeFile(file, "");
  await truncate(file, largestSheet);
  expect(await readSheet(file)).toHaveProperty("bytes.length", largestSheet);
  await truncate(file, largestSheet + 1);
  expect(await readSheet(file)).toEqual({ name: "large.csv", refused: "too-big" });
});

test("a file of 10 GB is refused by its size alone", async () => {
  const file = join(folder, "huge.csv");
  await writeFile(file, "");
  await truncate(file, 10 * 1024 ** 3);
  expect(await readSheet(file)).toEqual({ name: "huge.csv", refused: "too-big" });
});

test.skipIf(process.platform === "win32")("a pipe named like a sheet does not hang the app", async () => {
  execFileSync("mkfifo", [join(folder, "pipe.csv")]);
  expect(await readSheet(join(folder, "pipe.csv"))).toEqual({ name: "pipe.csv", refused: "unreadable" });
});

test("a folder and a missing file are unreadable", async () => {
  expect(await readSheet(folder)).toHaveProperty("refused", "unreadable");
  expect(await readSheet(join(folder, "gone.csv"))).toEqual({ name: "gone.csv", refused: "unreadable" });
});
