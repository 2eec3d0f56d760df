import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeWholeFiles } from "../../../electron/files/whole.ts";
import { whyNotSaved } from "../../../electron/shell/bridge/save-file.ts";

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "tapeline-save-"));
});
afterEach(() => rm(folder, { recursive: true }));

function writeWhole(path: string, content: Uint8Array): Promise<void> {
  return writeWholeFiles([{ path, content }]);
}

test("a file is written whole and nothing stays beside it", async () => {
  await writeWhole(join(folder, "bundle.zip"), new Uint8Array([80, 75, 0, 255]));
  expect(await readFile(join(folder, "bundle.zip"))).toEqual(Buffer.from([80, 75, 0, 255]));
  expect(await readdir(folder)).toEqual(["bundle.zip"]);
});

test("an older file is replaced", async () => {
  await writeFile(join(folder, "sheet.csv"), "a much longer older text");
  await writeWhole(join(folder, "sheet.csv"), new TextEncoder().encode("new"));
  expect(await readFile(join(folder, "sheet.csv"), "utf8")).toBe("new");
});

test("a name as long as a file system takes can be saved", async () => {
  const name = `${"ü".repeat(125)}.csv`;
  await writeWhole(join(folder, name), new Uint8Array(1));
  expect(await readdir(folder)).toEqual([name]);
});

test("a failure leaves what was there and nothing of the new file", async () => {
  // A folder of that name can't be replaced by a file.
  await mkdir(join(folder, "taken", "inside"), { recursive: true });
  await expect(writeWhole(join(folder, "taken"), new Uint8Array(9))).rejects.toThrow();
  expect(await readdir(folder, { recursive: true })).toEqual(["taken", join("taken", "inside")]);
});

test.each([
  ["ENOSPC", "no-space"],
  ["EDQUOT", "no-space"],
  ["EACCES", "not-allowed"],
  ["EROFS", "not-allowed"],
  ["EIO", "failed"],
])("the system's %s is told as %s", (code, why) => {
  expect(whyNotSaved(Object.assign(new Error("as the system says it"), { code }))).toBe(why);
});

test.skipIf(process.platform === "win32")("a stick that is gone is told as failed", async () => {
  const error = await writeWhole(join(folder, "gone", "bundle.zip"), new Uint8Array(9)).catch(
    (reason: unknown) => reason,
  );
  expect(error).toHaveProperty("code", "ENOENT");
  expect(whyNotSaved(error)).toBe("failed");
});
