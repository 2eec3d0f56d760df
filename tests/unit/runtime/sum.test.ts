import { copyFileSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { sumOf } from "../../../electron/runtime/sum.ts";

let root = "";
const sum = () => sumOf(root, ["main", "page", "never"], ["lock.json"]);

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), "sum-test-"));
  mkdirSync(join(root, "main", "parts"), { recursive: true });
  mkdirSync(join(root, "page"));
  for (const name of ["main/main.js", "main/parts/clock.js", "page/page.html", "lock.json"])
    writeFileSync(join(root, name), `what is in ${name}`);
});
afterAll(() => rmSync(root, { recursive: true }));

/** Does something to a file, and says whether the sum told; puts it back. */
async function isTold(name: string, change: (path: string) => void): Promise<boolean> {
  const path = join(root, name);
  const before = await sum();
  copyFileSync(path, join(root, "aside"));
  change(path);
  const after = await sum();
  copyFileSync(join(root, "aside"), path);
  return before !== after;
}

test("a build's sum tells every file that is changed, damaged, lost, added or renamed, and stays the same without", async () => {
  expect(await sum()).toBe(await sum());
  expect(await isTold("main/main.js", (path) => writeFileSync(path, "other"))).toBe(true);
  expect(await isTold("main/parts/clock.js", (path) => writeFileSync(path, ""))).toBe(true);
  expect(await isTold("page/page.html", (path) => rmSync(path))).toBe(true);
  expect(await isTold("lock.json", (path) => writeFileSync(path, "{}"))).toBe(true);
  const before = await sum();
  writeFileSync(join(root, "main", "new.js"), "");
  expect(await sum()).not.toBe(before);
  renameSync(join(root, "main", "new.js"), join(root, "main", "newer.js"));
  const added = await sum();
  rmSync(join(root, "main", "newer.js"));
  expect(await sum()).toBe(before);
  expect(added).not.toBe(before);
});
