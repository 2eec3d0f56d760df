import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { lockFiles } from "../../../electron/host/lock-files.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-lock-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("what was written is there for the next start, whole, and nothing lies beside it", () => {
  const files = lockFiles(folder);
  expect(files.read()).toBeNull();
  files.write("one");
  files.write("two");
  expect(lockFiles(folder).read()).toBe("two");
  expect(readdirSync(folder)).toEqual(["lock.json"]);
});

test("a write that fails leaves what was there", () => {
  const files = lockFiles(folder);
  files.write("one");
  mkdirSync(join(folder, "lock.json.part"));
  expect(() => files.write("two")).toThrow();
  expect(files.read()).toBe("one");
});

test("notes are added, also after a line that a power cut left unfinished", () => {
  const files = lockFiles(folder);
  expect(files.notes()).toEqual([]);
  files.note("a");
  appendFileSync(join(folder, "lock-log.jsonl"), "hal");
  files.note("b");
  expect(lockFiles(folder).notes()).toEqual(["a", "hal", "b"]);
});

test("a lock that can't be read is not the same as none", () => {
  mkdirSync(join(folder, "lock.json"));
  expect(() => lockFiles(folder).read()).toThrow();
});

test.each(["forget-pin", "forget-pin.txt"])("the file %s asks once", (name) => {
  writeFileSync(join(folder, name), "");
  expect(lockFiles(folder).takeForgetting()).toBe(true);
  expect(existsSync(join(folder, name))).toBe(false);
  expect(lockFiles(folder).takeForgetting()).toBe(false);
});

test("only this account may read the lock", () => {
  lockFiles(folder).write("x");
  expect(readFileSync(join(folder, "lock.json"), "utf8")).toBe("x");
  if (process.platform === "win32") return;
  expect(modeOf(join(folder, "lock.json"))).toBe(0o600);
});

function modeOf(file: string): number {
  return statSync(file).mode & 0o777;
}
