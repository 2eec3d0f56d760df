import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openLog } from "../../../electron/shell/log/log.ts";
import type { LogEvent } from "../../../electron/shell/log/log-line.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-log-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const gone: LogEvent = { what: "page-gone", host: "desk", place: "/day", reason: "crashed" };
const start = Date.parse("2031-05-04T08:00:00.000Z");

test("a line is in the file at once, for its owner alone", () => {
  const log = openLog(join(folder, "logs"), () => new Date(start));
  log.note(gone);
  expect(log.files()).toEqual([
    {
      name: "tapeline.log",
      text: "2031-05-04T08:00:00.000Z page-gone host=desk place=/day reason=crashed\n",
    },
  ]);
  if (process.platform !== "win32")
    expect(statSync(join(folder, "logs/tapeline.log")).mode & 0o777).toBe(0o600);
});

test("a second start goes on in the same file", () => {
  openLog(folder, () => new Date(start)).note(gone);
  openLog(folder, () => new Date(start + 1_000)).note(gone);
  expect(log().split("\n")).toHaveLength(3);

  function log(): string {
    return openLog(folder, () => new Date(start)).files()[0]?.text ?? "";
  }
});

test("files move on when they are full, and all of them stay within a megabyte", () => {
  let now = start;
  const log = openLog(folder, () => new Date(now));
  for (let index = 0; index < 20_000; index += 1) {
    log.note(gone);
    now += 60_000;
  }
  expect(readdirSync(folder).sort()).toEqual([
    "tapeline.1.log",
    "tapeline.2.log",
    "tapeline.3.log",
    "tapeline.log",
  ]);
  const sizes = readdirSync(folder).map((name) => statSync(join(folder, name)).size);
  expect(Math.max(...sizes)).toBeLessThanOrEqual(256 * 1024 + 200);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(1024 * 1024 + 800);
  const [newest] = log.files();
  expect(newest?.text).toContain(new Date(now - 60_000).toISOString());
});

test("a fault that comes back with every frame writes 120 lines a minute, and then how many were left out", () => {
  let now = start;
  const log = openLog(folder, () => new Date(now));
  for (let index = 0; index < 1_000; index += 1) log.note(gone);
  now += 60_000;
  log.note(gone);
  const lines = log.files()[0]?.text.trimEnd().split("\n") ?? [];
  expect(lines).toHaveLength(122);
  expect(lines[120]).toContain("left-out lines=880");
});

test("a log that can't be written stops nothing", () => {
  writeFileSync(join(folder, "logs"), "a file where the folder should be");
  const log = openLog(join(folder, "logs"), () => new Date(start));
  log.note(gone);
  expect(log.files()).toEqual([]);
});
