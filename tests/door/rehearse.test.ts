import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type Bench, bench, demoFolder, sheet } from "./rehearsing.ts";

let table: Bench;
beforeEach(() => {
  table = bench();
});
afterEach(() => table.remove());

const date = ["--date", "2026-09-19"];
const usual = ["--roster", "roster.csv", "--results", "results.csv", "--out", "out", ...date];

function rowsOf(text: string): Record<string, string>[] {
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

/** Marks as `name test variant: mark unit`, in the order of the file. */
function marks(): string[] {
  return rowsOf(table.out("marks.csv")).map(
    ({ name, test, variant, mark, unit }) => `${name} ${test} ${variant}: ${mark} ${unit}`,
  );
}

test("every paper form of PROTOCOLS' tables comes out as its mark", async () => {
  table.write(
    "roster.csv",
    sheet(`league, name, number
           Foundry Town, Ada, 1
           Foundry Town, Bea, 2
           Foundry Town, Cleo, 3
           Foundry Town, Dot, 4
           Foundry Town, Eve, 5
           Foundry Town, Fay, 6`),
  );
  // PROTOCOLS 1: the table of cadences as paper gives them (reps in all, off at the end); 2: 31 with 2 touches and 29;
  // 3: best of three, 1 in = 25.4 mm; 4: whole seconds rounded down, its stages' seconds; 5: hundredths rounded up.
  table.write(
    "results.csv",
    sheet(`league, number, test, variant, direction, reps, off_at_end, laps, extra, touches, standing_reach, touch_reach, unit, time, finished, rounds_done
           Foundry Town, 1, push-up, full, , 23, 3, , , , , , , , ,
           Foundry Town, 2, push-up, full, , 19, 3, , , , , , , , ,
           Foundry Town, 3, push-up, full, , 18, 2, , , , , , , , ,
           Foundry Town, 4, push-up, full, , 3, 3, , , , , , , , ,
           Foundry Town, 5, push-up, knee, , 16, 3, , , , , , , , ,
           Foundry Town, 6, push-up, , , 12, , , , , , , , , ,
           Foundry Town, 1, agility, , cw, , , 7, 3, 2, , , , , ,
           Foundry Town, 1, agility, , ccw, , , 7, 1, 0, , , , , ,
           Foundry Town, 2, agility, , cw, , , 7, 3, 0, , , , , ,
           Foundry Town, 2, agility, , ccw, , , 7, 3, , , , , , ,
           Foundry Town, 3, agility, , clockwise, , , 5, 0, 1, , , , , ,
           Foundry Town, 3, agility, , counter-clockwise, , , 6, 2, 0, , , , , ,
           Foundry Town, 4, agility, , cw, , , 6, 0, 0, , , , , ,
           Foundry Town, 1, vertical, , , , , , , , 86.5, 103, in, , ,
           Foundry Town, 1, vertical, , , , , , , , 86.5, 104.75, in, , ,
           Foundry Town, 1, vertical, , , , , , , , 86.5, 104 1/4, in, , ,
           Foundry Town, 2, vertical, , , , , , , , 219.5, 262, cm, , ,
           Foundry Town, 2, vertical, , , , , , , , 219.5, 266, , , ,
           Foundry Town, 3, vertical, , , , , , , , 210, 256, cm, , ,
           Foundry Town, 1, core, , , , , , , , , , , 0:59.9, ,
           Foundry Town, 2, core, , , , , , , , , , , 1:00, ,
           Foundry Town, 3, core, , , , , , , , , , , 209 s, ,
           Foundry Town, 4, core, , , , , , , , , , , 3:59.999, ,
           Foundry Town, 5, core, , , , , , , , , , , 4:00, ,
           Foundry Town, 6, core, , , , , , , , , , , 301, ,
           Foundry Town, 1, endurance, , , , , , , , , , , 3:10.11, yes,
           Foundry Town, 2, endurance, , , , , , , , , , , 3:10.10, ,
           Foundry Town, 3, endurance, , , , , , , , , , , , no, 2
           Foundry Town, 4, endurance, , , , , , , , , , , 5:00, yes,`),
  );
  expect(await table.run(usual)).toMatchObject({ code: 0, stderr: "" });
  expect(marks()).toEqual([
    "Ada push-up full: 20 reps",
    "Ada agility : 29.5 landings",
    "Ada vertical : 46.4 cm",
    "Ada core : 59 s",
    "Ada endurance : 190.2 s",
    "Bea push-up full: 16 reps",
    "Bea agility : 31 landings",
    "Bea vertical : 46.5 cm",
    "Bea core : 60 s",
    "Bea endurance : 190.1 s",
    "Cleo push-up full: 16 reps",
    "Cleo agility : 22.75 landings",
    "Cleo vertical : 46 cm",
    "Cleo core : 209 s",
    "Cleo endurance :  s",
    "Dot push-up full: 0 reps",
    "Dot agility :  landings",
    "Dot core : 239 s",
    "Dot endurance : 300 s",
    "Eve push-up knee: 13 reps",
    "Eve core : 240 s",
    "Fay push-up full: 12 reps",
    "Fay core : 301 s",
  ]);
});

/**
 * Verdicts by hand: the change over √2 typical errors, and the quantiles of CHECKS (0.84 likely, 1.96 clear). Push-up 2
 * reps: 5 / 2.83 = 1.77; 2 / 2.83 = 0.71. Agility 1 landing: 2 / 1.41 = 1.41. Vertical 4 % of 43.25: 6.5 / 2.45 = 2.7. Core
 * 6 % of 224.5: 31 / 19.0 = 1.6. Endurance 3 % of 192.6 s: 4.8 / 8.2 = 0.6.
 */
test("first, best, equal and below, against the last test and the best one, whole file", async () => {
  table.write(
    "roster.csv",
    sheet(`league, name, number, board
           Övre Kvarn, "Zoë,the =1+1", 07, name
           Foundry Town, =2+3, 7, bib
           Foundry Town, Ada, , hidden`),
  );
  table.write(
    "past.csv",
    sheet(`league, number, name, date, test, variant, mark, unit
           Övre Kvarn, 07, , 2026-01-17, push-up, full, 14, reps
           Övre Kvarn, 07, , 2026-05-16, push-up, full, 15, reps
           Övre Kvarn, 07, , 2026-05-16, agility, , 27.5, landings
           Övre Kvarn, 07, , 2026-05-16, vertical, , 40, cm
           Övre Kvarn, 07, , 2026-05-16, core, , 4:00, m:ss
           Övre Kvarn, 07, , 2026-05-16, endurance, , 3:15.0, m:ss.s
           Foundry Town, 7, , 2026-01-17, push-up, full, 25, reps
           Foundry Town, 7, , 2026-05-16, push-up, full, 18, reps
           Foundry Town, 7, , 2026-05-16, vertical, , 46, cm
           Foundry Town, , Ada, 2026-05-16, push-up, full, 30, reps
           Foundry Town, , Ada, 2026-05-16, core, , 2:00, `),
  );
  table.write(
    "results.csv",
    sheet(`league, number, name, test, variant, direction, reps, laps, extra, touches, standing_reach, touch_reach, time, finished, rounds_done
           Övre Kvarn, 07, , push-up, , , 20, , , , , , , ,
           Övre Kvarn, 07, , agility, , cw, , 7, 3, 2, , , , ,
           Övre Kvarn, 07, , agility, , ccw, , 7, 1, 0, , , , ,
           Övre Kvarn, 07, , vertical, , , , , , , 210, 256.5, , ,
           Övre Kvarn, 07, , core, , , , , , , , , 3:29, ,
           Övre Kvarn, 07, , endurance, , , , , , , , , 3:10.11, ,
           Foundry Town, 7, , push-up, full, , 20, , , , , , , ,
           Foundry Town, 7, , vertical, , , , , , , 200, 246, , ,
           Foundry Town, , Ada, push-up, knee, , 16, , , , , , , ,
           Foundry Town, , Ada, agility, , cw, , 6, 1, 0, , , , ,
           Foundry Town, , Ada, core, , , , , , , , , 2:00, ,
           Foundry Town, , Ada, endurance, , , , , , , , , , no, 1`),
  );
  const ran = await table.run([...usual, "--past", "past.csv"]);
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  expect(ran.stdout).toContain("9 marks: 1 first, 4 best, 2 equal, 2 below");
  expect(table.out("marks.csv")).toBe(
    [
      "league,number,name,bib,test,variant,mark,unit,best,previous,change,verdict",
      "Foundry Town,7,'=2+3,2,push-up,full,20,reps,below,18,2,noise",
      "Foundry Town,7,'=2+3,2,vertical,,46,cm,equal,46,0,noise",
      "Foundry Town,,Ada,3,push-up,knee,16,reps,first,,,",
      "Foundry Town,,Ada,3,agility,,,landings,,,,",
      "Foundry Town,,Ada,3,core,,120,s,equal,120,0,noise",
      "Foundry Town,,Ada,3,endurance,,,s,,,,",
      `Övre Kvarn,07,"Zoë,the =1+1",1,push-up,full,20,reps,best,15,5,likely gain`,
      `Övre Kvarn,07,"Zoë,the =1+1",1,agility,,29.5,landings,best,27.5,2,likely gain`,
      `Övre Kvarn,07,"Zoë,the =1+1",1,vertical,,46.5,cm,best,40,6.5,clear gain`,
      `Övre Kvarn,07,"Zoë,the =1+1",1,core,,209,s,below,240,-31,likely loss`,
      `Övre Kvarn,07,"Zoë,the =1+1",1,endurance,,190.2,s,best,195,-4.8,noise`,
      "",
    ].join("\r\n"),
  );
  expect(table.out("rejected.csv")).toBe("sheet,line,reason\r\n");
  const board = JSON.parse(table.out("board.json"));
  expect(board).toMatchObject({ demo: false, day: { date: "2026-09-19", state: "closed" } });
  expect(board.newest.map((best: { label: unknown }) => best.label)).toEqual(
    Array.from({ length: 4 }, () => ({ as: "name", name: "Zoë,the =1+1" })),
  );
  // Ada is hidden, and "=2+3" agreed to be shown by bib alone.
  expect(table.out("board.json")).not.toContain("Ada");
  expect(table.out("board.json")).not.toContain("=2+3");
});

test("bibs run from 1 in the order of the roster's rows, and results can name them", async () => {
  table.write(
    "roster.csv",
    sheet(`league, name, number
           Övre Kvarn, Zelda, 5
           Foundry Town, Zelda, 5
           Foundry Town, Abel, `),
  );
  table.write(
    "results.csv",
    sheet(`bib, test, reps
           3, push-up, 13
           1, push-up, 11
           2, push-up, 12
           4, push-up, 14`),
  );
  const ran = await table.run(usual);
  expect(ran.code).toBe(3);
  const rows = rowsOf(table.out("marks.csv")).map(({ league, name, bib, mark }) => [league, name, bib, mark]);
  expect(rows).toEqual([
    ["Foundry Town", "Abel", "3", "13"],
    ["Foundry Town", "Zelda", "2", "12"],
    ["Övre Kvarn", "Zelda", "1", "11"],
  ]);
  expect(rowsOf(table.out("rejected.csv"))).toEqual([
    {
      sheet: "results",
      line: "5",
      reason: "bib: Nobody has the bib 4 today. Check it against the list at the check-in table.",
    },
  ]);
});

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
    sheet(`league, number, date, test, mark
           Foundry Town, 1, 2026-05-16, push-up, 12
           Foundry Town, 1, 2027-05-16, push-up, 13
           Foundry Town, 1, 2026-02-30, push-up, 13`),
  );
  table.write(
    "results.csv",
    `league,number,test,reps,time,laps,direction\r\n${sheet(`
      Foundry Town, 1, push-up, 15, , ,
      Foundry Town, 1, push-up, 16, , ,
      Foundry Town, 4, push-up, -1, , ,
      Foundry Town, 4, core, , 3.00, ,
      Foundry Town, 4, endurance, , NaN, ,
      Foundry Town, 9, push-up, 10, , ,
      Foundry Town, 4, agility, , , 1e9, cw`)}Foundry Town,4,core,,"1,5",,\r\n`,
  );
  const ran = await table.run([...usual, "--past", "past.csv"]);
  expect(ran.code).toBe(3);
  expect(ran.stdout).toContain("roster: 2 rows taken, 3 kept back");
  expect(ran.stdout).toContain(
    "1 athlete may be under 18 and the roster has no guardian's consent: ask for their guardian's consent at the door",
  );
  expect(ran.stdout).toContain("12 rows were kept back");
  const rejected = rowsOf(table.out("rejected.csv"));
  expect(rejected.map(({ sheet, line }) => `${sheet} ${line}`)).toEqual([
    ...["roster 3", "roster 4", "roster 6", "past 3", "past 4"],
    ...[3, 4, 5, 6, 7, 8, 9].map((line) => `results ${line}`),
  ]);
  expect(rejected.every(({ reason }) => (reason ?? "").length > 20)).toBe(true);
  expect(rejected[7]?.reason).toContain("3:00");
  expect(marks()).toEqual(["Ada push-up full: 15 reps"]);
});

test("more rows kept back than a screen lists are all listed", async () => {
  table.write("roster.csv", "league,name\r\nFoundry Town,Ada\r\n");
  const rows = Array.from({ length: 700 }, (_, index) => `${index + 2},push-up,10`);
  table.write("results.csv", `bib,test,reps\r\n1,push-up,10\r\n${rows.join("\r\n")}\r\n`);
  expect((await table.run(usual)).code).toBe(3);
  const lines = rowsOf(table.out("rejected.csv")).map(({ line }) => Number(line));
  expect(lines).toEqual(Array.from({ length: 700 }, (_, index) => index + 3));
});

test.each([
  ["a sheet that is not there", ["--roster", "gone.csv", ...usual.slice(2)], "There is no such file"],
  ["a folder", ["--roster", "temporary", ...usual.slice(2)], "This is a folder"],
  ["an empty file", ["--roster", "empty.csv", ...usual.slice(2)], "There is nothing in this file"],
  ["a picture", ["--roster", "picture.csv", ...usual.slice(2)], "This is a picture"],
  ["no league", ["--roster", "noleague.csv", ...usual.slice(2)], "No column is headed “league”"],
  ["results of nothing", [...usual.slice(0, 3), "empty.csv", ...usual.slice(4)], "nothing in this file"],
  ["a past sheet that is not there", [...usual, "--past", "gone.csv"], "There is no such file"],
  ["no roster", usual.slice(2), "--roster is missing"],
  ["no results", [...usual.slice(0, 2), ...usual.slice(4)], "--results is missing"],
  ["no folder", usual.slice(0, 4), "--out is missing"],
  ["nothing at all", [], "is missing"],
  ["an unknown option", [...usual, "--rooster", "r.csv"], "There is no option --rooster"],
  ["a stray word", [...usual, "stray.csv"], "“stray.csv” belongs to no option"],
  ["an option without value", [...usual, "--past"], "--past needs a value"],
  ["an option that swallows the next", ["--past", ...usual], "--past needs a value"],
  ["an option given twice", [...usual, "--out", "there"], "--out is given twice"],
  ["a date that is none", [...usual.slice(0, 6), "--date", "2026-02-30"], "“2026-02-30” is no date"],
  ["a file where a folder should be", [...usual.slice(0, 5), "roster.csv"], "is a file"],
])("%s ends with 2, a clear line and no file", async (_name, args, line) => {
  table.write("roster.csv", "league,name\r\nFoundry Town,Ada\r\n");
  table.write("results.csv", "bib,test,reps\r\n1,push-up,10\r\n");
  table.write("noleague.csv", "team,name\r\nFoundry Town,Ada\r\n");
  table.write("empty.csv", "");
  table.write("picture.csv", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]));
  const ran = await table.run(args);
  expect(ran).toMatchObject({ code: 2, stdout: "" });
  expect(ran.stderr).toContain(line);
  expect(ran.stderr).not.toMatch(/\bat .*:\d+:\d+/);
  expect(existsSync(join(table.folder, "out"))).toBe(false);
  expect(table.leftBehind()).toEqual([]);
});

test("a sheet is never written over by the results", async () => {
  const path = table.write("marks.csv", "league,name\r\nFoundry Town,Ada\r\n");
  table.write("results.csv", "bib,test,reps\r\n1,push-up,10\r\n");
  const ran = await table.run(["--roster", "marks.csv", "--results", "results.csv", "--out", "."]);
  expect(ran.code).toBe(2);
  expect(ran.stderr).toContain("would be overwritten");
  expect(readFileSync(path, "utf8")).toContain("Ada");
});

test("the usage is there for the asking", async () => {
  const ran = await table.run(["--help"]);
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  expect(ran.stdout).toContain("--roster roster.csv --results results.csv [--past past.csv] --out FOLDER");
});

const demo = ["roster", "results", "past"].flatMap((kind) => [`--${kind}`, join(demoFolder, `${kind}.csv`)]);

test("the demonstration goes through whole, twice with the same marks, and leaves nothing behind", async () => {
  const ran = await table.run([...demo, "--out", "out", ...date]);
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  expect(ran.stdout).toContain("60 athletes checked in");
  expect(ran.stdout).toContain("2 athletes may be under 18");
  expect(ran.stdout).toMatch(/4 of them are unusual/);
  expect(readdirSync(join(table.folder, "out")).sort()).toEqual([
    ...["board.json", "bundle.zip", "marks.csv", "rejected.csv"],
  ]);
  const first = table.out("marks.csv");
  expect(await table.run([...demo, "--out", "out", ...date])).toMatchObject({ code: 0 });
  expect(table.out("marks.csv")).toBe(first);
  expect(table.leftBehind()).toEqual([]);
});

test("the bundle of the demonstration opens, keeps its promises and matches the marks", async () => {
  await table.run([...demo, "--out", "out", ...date]);
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
  const classes = Map.groupBy(rows, (row) =>
    [row.test, row.variant, row.age_band, row.category, row.quarter].join("|"),
  );
  expect(Math.min(...[...classes.values()].map((some) => some.length))).toBeGreaterThanOrEqual(5);
  expect(JSON.stringify(rows)).toContain("2026-Q3");
  const everything = Object.keys(files).map(text).join("\n");
  for (const { league, name } of rowsOf(readFileSync(join(demoFolder, "roster.csv"), "utf8"))) {
    // Names as short as a word of the codebook say nothing by being in it.
    if ((name ?? "").length > 3) expect.soft(everything).not.toContain(name);
    expect.soft(everything).not.toContain(league);
  }
  // Each row of the bundle is a mark of somebody who shares.
  const sharers = new Set(
    rowsOf(readFileSync(join(demoFolder, "roster.csv"), "utf8"))
      .filter(({ share }) => share === "yes")
      .map(({ league, name }) => `${league} ${name}`),
  );
  const own = rowsOf(table.out("marks.csv"))
    .filter(({ league, name }) => sharers.has(`${league} ${name}`))
    .map(({ test, variant, mark, unit }) => `${test} ${variant} ${mark} ${unit}`);
  for (const { test, variant, mark, unit } of rows) {
    const at = own.indexOf(`${test} ${variant} ${mark} ${unit}`);
    expect(at).toBeGreaterThanOrEqual(0);
    own.splice(at, 1);
  }
});

test("of a few people nothing may leave, and the bundle says so", async () => {
  table.write("roster.csv", "league,name,share\r\nFoundry Town,Ada,yes\r\n");
  table.write("results.csv", "bib,test,reps\r\n1,push-up,10\r\n");
  const ran = await table.run(usual);
  expect(ran.code).toBe(0);
  expect(ran.stdout).toContain("bundle: 0 rows would leave, 1 would stay here");
  const files = unzipSync(readFileSync(join(table.folder, "out", "bundle.zip")));
  expect(rowsOf(strFromU8(files["marks.csv"] ?? new Uint8Array()))).toEqual([]);
  expect(Object.keys(files)).toContain("privacy.json");
});

test("stopped in the middle, it takes the names with it", async () => {
  const rows = Array.from({ length: 19_000 }, (_, index) => `Foundry Town,Skater ${index}`);
  table.write("roster.csv", `league,name\r\n${rows.join("\r\n")}\r\n`);
  table.write("results.csv", "bib,test,reps\r\n1,push-up,10\r\n");
  const ran = await table.run(usual, async (pid) => {
    while (table.leftBehind().length === 0) await setTimeout(5);
    await setTimeout(50);
    process.kill(pid, "SIGTERM");
  });
  expect(ran).toMatchObject({ code: 143, stdout: "" });
  expect(table.leftBehind()).toEqual([]);
  expect(existsSync(join(table.folder, "out"))).toBe(false);
});
