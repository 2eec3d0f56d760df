import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { type Bench, bench, marksIn, type Ran, rowsOf, sheet, usual } from "./rehearsing.ts";

let table: Bench;
beforeEach(() => {
  table = bench();
});
afterEach(() => table.remove());

test("what can't be taken is listed by sheet and line, and everything else is taken", async () => {
  table.write(
    "roster.csv",
    sheet(`league, name, number, birth_year
           Foundry Town, Ada, 1, 1990
           Foundry Town, , 2, 1991
           Foundry Town, Cleo, 12345, 1992
           Foundry Town, Dot, 4, 2009
           Foundry Town, Ada again, 1, 1990`),
  );
  table.write(
    "past.csv",
    sheet(`league, number, date, test, variant, mark
           Foundry Town, 1, 2026-05-16, push-up, full, 12
           Foundry Town, 1, 2027-05-16, push-up, full, 13
           Foundry Town, 1, 2026-02-30, push-up, full, 13`),
  );
  table.write(
    "results.csv",
    `league,number,test,variant,reps,missed_at_end,time,laps,direction\r\n${sheet(`
      Foundry Town, 1, push-up, full, 15, 0, , ,
      Foundry Town, 1, push-up, full, 16, 0, , ,
      Foundry Town, 4, push-up, full, -1, 0, , ,
      Foundry Town, 4, core, , , , 3.00, ,
      Foundry Town, 4, endurance, , , , NaN, ,
      Foundry Town, 9, push-up, full, 10, 0, , ,
      Foundry Town, 4, agility, , , , , 1e9, cw`)}Foundry Town,4,core,,,,"1.001,5",,\r\n`,
  );
  const ran = await table.run([...usual, "--past-results", "past.csv"]);
  expect(ran.code).toBe(3);
  expect(ran.stdout).toContain("roster: 2 rows imported, 3 not imported");
  expect(ran.stdout).toContain(
    "1 athlete may be under 18 and the roster has no guardian's consent: ask for it before the day",
  );
  expect(ran.stdout).toContain("12 rows were not imported");
  const rejected = rowsOf(table.out("rejected.csv"));
  expect(rejected.map(({ sheet, line }) => `${sheet} ${line}`)).toEqual([
    ...["roster 3", "roster 4", "roster 6", "past 3", "past 4"],
    ...[3, 4, 5, 6, 7, 8, 9].map((line) => `results ${line}`),
  ]);
  expect(rejected.every(({ reason }) => (reason ?? "").length > 20)).toBe(true);
  expect(rejected[7]?.reason).toContain("3:00");
  expect(marksIn(table)).toEqual(["Ada push-up full: 15 reps"]);
});

test("more rows kept back than a screen lists are all listed", async () => {
  table.write("roster.csv", "league,name\r\nFoundry Town,Ada\r\n");
  const rows = Array.from({ length: 700 }, (_, index) => `${index + 2},push-up,full,10,0`);
  table.write(
    "results.csv",
    `bib,test,variant,reps,missed_at_end\r\n1,push-up,full,10,0\r\n${rows.join("\r\n")}\r\n`,
  );
  expect((await table.run(usual)).code).toBe(3);
  const lines = rowsOf(table.out("rejected.csv")).map(({ line }) => Number(line));
  expect(lines).toEqual(Array.from({ length: 700 }, (_, index) => index + 3));
});

const refusals: readonly (readonly [what: string, args: readonly string[], line: string])[] = [
  ["a sheet that is not there", ["--roster", "gone.csv", ...usual.slice(2)], "There is no such file"],
  ["a folder", ["--roster", "temporary", ...usual.slice(2)], "This is a folder"],
  ["an empty file", ["--roster", "empty.csv", ...usual.slice(2)], "There is nothing in this file"],
  ["a picture", ["--roster", "picture.csv", ...usual.slice(2)], "This is a picture"],
  ["no league", ["--roster", "noleague.csv", ...usual.slice(2)], "No column is headed “league”"],
  ["a past sheet that is not there", [...usual, "--past-results", "gone.csv"], "There is no such file"],
  ["no roster", usual.slice(2), "--roster is missing"],
  ["no results", [...usual.slice(0, 2), ...usual.slice(4)], "--results is missing"],
  ["no folder", usual.slice(0, 4), "--out is missing"],
  ["nothing at all", [], "is missing"],
  ["an unknown option", [...usual, "--rooster", "r.csv"], "There is no option --rooster"],
  ["a stray word", [...usual, "stray.csv"], "I don't know what “stray.csv” is for"],
  ["an option without value", [...usual, "--past-results"], "--past-results needs a value"],
  ["an option that swallows the next", ["--past", ...usual], "--past needs a value"],
  ["an option by both its names", [...usual, "--past", "a.csv", "--past-results", "b.csv"], "--past-results"],
  ["an option given twice", [...usual, "--out", "there"], "--out is given twice"],
  ["a date that is none", [...usual.slice(0, 6), "--date", "2026-02-30"], "“2026-02-30” is not a date"],
  ["a file where a folder should be", [...usual.slice(0, 5), "roster.csv"], "is a file"],
];

describe("with 2, a clear line and no file", () => {
  let ran: readonly Ran[] = [];
  let before: readonly string[] = [];
  beforeAll(async () => {
    const desk = bench();
    desk.write("roster.csv", "league,name\r\nFoundry Town,Ada\r\n");
    desk.write("results.csv", "bib,test,variant,reps,missed_at_end\r\n1,push-up,full,10,0\r\n");
    desk.write("noleague.csv", "crew,name\r\nFoundry Town,Ada\r\n");
    desk.write("empty.csv", "");
    desk.write("picture.csv", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]));
    before = readdirSync(desk.folder).toSorted();
    ran = await desk.runMany(refusals.map(([, args]) => args));
    desk.remove();
  });

  // That a process ends with that code too, others of this file see.
  test.each(refusals.map(([what, , line], turn) => [what, line, turn] as const))(
    "%s ends",
    (_what, line, turn) => {
      const { stderr = "", ...rest } = ran[turn] ?? {};
      expect(rest).toEqual({ code: 2, stdout: "", held: before });
      expect(stderr).toContain(line);
      expect(stderr).not.toMatch(/\bat .*:\d+:\d+/);
    },
  );
});

test("results that can't be used as a whole are kept back as one, and the roster is tried all the same", async () => {
  table.write("roster.csv", "league,name\r\nFoundry Town,Ada\r\nFoundry Town,\r\n");
  table.write("empty.csv", "");
  const ran = await table.run([...usual.slice(0, 3), "empty.csv", ...usual.slice(4)]);
  expect(ran.code).toBe(3);
  const rejected = rowsOf(table.out("rejected.csv"));
  expect(rejected.map(({ sheet, line }) => `${sheet} ${line}`)).toEqual(["roster 3", "results 1"]);
  expect(rejected[1]?.reason).toContain("nothing in this file");
});

test("a sheet is never written over by the results", async () => {
  const path = table.write("marks.csv", "league,name\r\nFoundry Town,Ada\r\n");
  table.write("results.csv", "bib,test,variant,reps,missed_at_end\r\n1,push-up,full,10,0\r\n");
  const ran = await table.run(["--roster", "marks.csv", "--results", "results.csv", "--out", "."]);
  expect(ran.code).toBe(2);
  expect(ran.stderr).toContain("would overwrite");
  expect(readFileSync(path, "utf8")).toContain("Ada");
});

test("the usage is there for the asking", async () => {
  const ran = await table.run(["--help"]);
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  expect(ran.stdout).toContain(
    "--roster roster.csv --results results.csv [--past-results past.csv] --out FOLDER",
  );
});

// By how far it is and not by a time: no machine is too slow or too fast for it.
test.each([
  ["has a place for its store", ""],
  ["makes its store", "tapeline.sqlite"],
  ["has its store", "tapeline.sqlite-tally"],
])("stopped once it %s, it takes the names with it", async (_how, file) => {
  const rows = Array.from({ length: 19_000 }, (_, index) => `Foundry Town,Skater ${index}`);
  table.write("roster.csv", `league,name\r\n${rows.join("\r\n")}\r\n`);
  table.write("results.csv", "bib,test,variant,reps,missed_at_end\r\n1,push-up,full,10,0\r\n");
  const isThere = () => table.leftBehind().some((folder) => existsSync(join(table.temporary, folder, file)));
  const ran = await table.run(usual, async (pid) => {
    while (!isThere()) await setTimeout(1);
    process.kill(pid, "SIGTERM");
  });
  expect(ran).toMatchObject({ code: 143, stdout: "" });
  expect(table.leftBehind()).toEqual([]);
  expect(existsSync(join(table.folder, "out"))).toBe(false);
});
