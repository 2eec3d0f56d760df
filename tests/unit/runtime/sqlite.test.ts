import { cp, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { modulesFolder } from "../../../electron/runtime/host.ts";
import { patchSource } from "../../../electron/runtime/sqlite.ts";

let source: string;

beforeEach(async () => {
  source = await mkdtemp(join(tmpdir(), "tapeline-source-"));
  for (const part of ["binding.gyp", "src"]) {
    await cp(join(modulesFolder, "better-sqlite3", part), join(source, part), { recursive: true });
  }
});
afterEach(() => rm(source, { recursive: true }));

async function wholeSource(): Promise<string> {
  const names = await readdir(join(source, "src"), { recursive: true });
  const files = names.filter((name) => /\.[ch]pp$/.test(name));
  return (await Promise.all(files.map((name) => readFile(join(source, "src", name), "utf8")))).join("\n");
}

it("leaves no kept string that needs Node-API 10 in the installed better-sqlite3", async () => {
  expect(await wholeSource()).toContain("Reference<Napi::String>");
  await patchSource(source);
  expect(await wholeSource()).not.toContain("Reference<Napi::String>");
  const recipe = await readFile(join(source, "binding.gyp"), "utf8");
  expect(recipe).toContain("NAPI_VERSION=9");
  expect(recipe).not.toContain("NAPI_VERSION=10");
});

it("defines the class that holds strings before anything uses it", async () => {
  await patchSource(source);
  const helpers = await readFile(join(source, "src", "util", "helpers.cpp"), "utf8");
  expect(helpers.startsWith("class HeldString {")).toBe(true);
});

it("refuses sources that are not what the change was written for", async () => {
  await writeFile(join(source, "src", "util", "bind-map.cpp"), "class BindMap {};\n");
  await expect(patchSource(source)).rejects.toThrow(/better-sqlite3 .* has changed: no "Napi::Reference/);
});
