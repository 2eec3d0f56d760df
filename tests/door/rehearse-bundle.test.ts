import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterEach, beforeEach, expect, test } from "vitest";
import { countBundle } from "../checks/count-bundle.ts";
import { type Bench, bench, demo, demoFolder, rowsOf, usual } from "./rehearsing.ts";

let table: Bench;
beforeEach(() => {
  table = bench();
});
afterEach(() => table.remove());

test("the demonstration goes through whole, twice with the same marks, and leaves nothing behind", async () => {
  const ran = await table.run(demo);
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  expect(ran.stdout).toContain("60 athletes checked in");
  expect(ran.stdout).toContain("2 athletes may be under 18");
  expect(ran.stdout).toMatch(/4 of them are unusual/);
  expect(readdirSync(join(table.folder, "out")).sort()).toEqual([
    ...["board.json", "bundle.zip", "marks.csv", "rejected.csv"],
  ]);
  const first = table.out("marks.csv");
  expect(await table.run(demo)).toMatchObject({ code: 0 });
  expect(table.out("marks.csv")).toBe(first);
  expect(table.leftBehind()).toEqual([]);
});

test("the bundle of the demonstration opens, keeps its promises and matches the marks", async () => {
  await table.run(demo);
  const files = unzipSync(readFileSync(join(table.folder, "out", "bundle.zip")));
  const text = (name: string) => strFromU8(files[name] ?? new Uint8Array());
  const { resources } = JSON.parse(text("datapackage.json")) as {
    resources: { path: string; hash: string }[];
  };
  for (const { path, hash } of resources) {
    const sum = createHash("sha256")
      .update(files[path] ?? "")
      .digest("hex");
    expect.soft(hash, path).toContain(sum);
  }
  const rows = rowsOf(text("marks.csv"));
  expect(rows.length).toBeGreaterThan(50);
  // No log remembers a rehearsal, so that two of them could be subtracted: it says what it is.
  expect(JSON.parse(text("datapackage.json"))).toMatchObject({ rehearsal: true });
  expect(text("codebook.md")).toContain("**This is a rehearsal.** Do not share it");
  expect(countBundle(readFileSync(join(table.folder, "out", "bundle.zip"))).k).toBeGreaterThanOrEqual(5);
  expect(JSON.stringify(rows)).toContain("2026-Q3");
  const everything = Object.keys(files).map(text).join("\n");
  for (const { league, name } of rowsOf(readFileSync(join(demoFolder, "roster.csv"), "utf8"))) {
    // Names as short as a word of the codebook say nothing by being in it.
    if ((name ?? "").length > 3) expect.soft(everything).not.toContain(name);
    expect.soft(everything).not.toContain(league);
  }
  // Each row of the bundle has a mark of its own, of somebody who shares, that it holds.
  const sharers = new Set(
    rowsOf(readFileSync(join(demoFolder, "roster.csv"), "utf8"))
      .filter(({ share }) => share === "yes")
      .map(({ league, name }) => `${league} ${name}`),
  );
  const own = rowsOf(table.out("marks.csv")).filter(
    ({ league, name, mark }) => sharers.has(`${league} ${name}`) && mark !== "",
  );
  const within = (mark: string | undefined, low: string | undefined, high: string | undefined) =>
    (low === "" || Number(mark) >= Number(low)) && (high === "" || Number(mark) < Number(high));
  for (const { test, variant, mark_low, mark_high, unit } of rows) {
    const at = own.findIndex(
      (one) =>
        one.test === test &&
        one.variant === variant &&
        one.unit === unit &&
        within(one.mark, mark_low, mark_high),
    );
    expect(at).toBeGreaterThanOrEqual(0);
    own.splice(at, 1);
  }
});

test("of a few people nothing may leave, and the bundle says so", async () => {
  table.write("roster.csv", "league,name,share\r\nFoundry Town,Ada,yes\r\n");
  table.write("results.csv", "bib,test,variant,reps,missed_at_end\r\n1,push-up,full,10,0\r\n");
  const ran = await table.run(usual);
  expect(ran.code).toBe(0);
  expect(ran.stdout).toContain("anonymous data file: 0 rows included, 1 not included");
  const files = unzipSync(readFileSync(join(table.folder, "out", "bundle.zip")));
  expect(rowsOf(strFromU8(files["marks.csv"] ?? new Uint8Array()))).toEqual([]);
  expect(Object.keys(files)).toContain("privacy.json");
});
