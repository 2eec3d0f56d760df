import { afterEach, beforeEach, expect, test } from "vitest";
import { type Bench, bench, marksIn, rowsOf, sheet, usual } from "./rehearsing.ts";

let table: Bench;
beforeEach(() => {
  table = bench();
});
afterEach(() => table.remove());

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
           Foundry Town, 6, push-up, full, , 12, 0, , , , , , , , ,
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
  expect(marksIn(table)).toEqual([
    "Ada push-up full: 20 reps",
    "Ada agility : 29.5 landings",
    "Ada vertical : 46.355 cm",
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
    sheet(`league, number, name, test, variant, direction, reps, missed_at_end, laps, extra, touches, standing_reach, touch_reach, time, finished, rounds_done
           Övre Kvarn, 07, , push-up, full, , 20, 0, , , , , , , ,
           Övre Kvarn, 07, , agility, , cw, , , 7, 3, 2, , , , ,
           Övre Kvarn, 07, , agility, , ccw, , , 7, 1, 0, , , , ,
           Övre Kvarn, 07, , vertical, , , , , , , , 210, 256.5, , ,
           Övre Kvarn, 07, , core, , , , , , , , , , 3:29, ,
           Övre Kvarn, 07, , endurance, , , , , , , , , , 3:10.11, ,
           Foundry Town, 7, , push-up, full, , 20, 0, , , , , , , ,
           Foundry Town, 7, , vertical, , , , , , , , 200, 246, , ,
           Foundry Town, , Ada, push-up, knee, , 16, 0, , , , , , , ,
           Foundry Town, , Ada, agility, , cw, , , 6, 1, 0, , , , ,
           Foundry Town, , Ada, core, , , , , , , , , , 2:00, ,
           Foundry Town, , Ada, endurance, , , , , , , , , , , no, 1`),
  );
  const ran = await table.run([...usual, "--past", "past.csv"]);
  expect(ran).toMatchObject({ code: 0, stderr: "" });
  expect(ran.stdout).toContain("9 results: 1 first, 4 PB, 2 equal, 2 below");
  expect(table.out("marks.csv")).toBe(
    [
      "league,number,name,bib,test,variant,mark,unit,best,previous,change,verdict",
      "Foundry Town,7,'=2+3,2,push-up,full,20,reps,below,18,2,noise",
      "Foundry Town,7,'=2+3,2,vertical,,46,cm,equal,46,0,",
      "Foundry Town,,Ada,3,push-up,knee,16,reps,first,,,",
      "Foundry Town,,Ada,3,agility,,,landings,,,,",
      "Foundry Town,,Ada,3,core,,120,s,equal,120,0,noise",
      "Foundry Town,,Ada,3,endurance,,,s,,,,",
      `Övre Kvarn,07,"Zoë,the =1+1",1,push-up,full,20,reps,best,15,5,clear gain`,
      `Övre Kvarn,07,"Zoë,the =1+1",1,agility,,29.5,landings,best,27.5,2,likely gain`,
      `Övre Kvarn,07,"Zoë,the =1+1",1,vertical,,46.5,cm,best,40,6.5,`,
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
    sheet(`bib, test, variant, reps, missed_at_end
           3, push-up, full, 13, 0
           1, push-up, full, 11, 0
           2, push-up, full, 12, 0
           4, push-up, full, 14, 0`),
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
