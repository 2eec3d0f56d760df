import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { attemptId } from "../../electron/api/intake/attempt-id.ts";
import { takeSheet } from "../../electron/api/intake/sheet.ts";
import { Refusal } from "../../electron/domain/refusal.ts";
import { sheetKinds } from "../../electron/sheets/headers.ts";
import { allAthletes } from "../../electron/store/tables/athletes.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { leaveOut, setEntrant } from "../../electron/store/tables/entrants.ts";
import { marksOfDay } from "../../electron/store/tables/marks.ts";
import { voidAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "../store/connection.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { checkIn, holdDay, lookAt, refusalOfSheet, take } from "./sheets.ts";

let table: TestDesk;
let dayId: number;
/** Ids by name: Vera (bib 1) and Zoë (bib 2) are checked in, Moss is expected, Otto came for an earlier day. */
let ids: Record<string, number>;

beforeEach(async () => {
  table = testDesk();
  const before = holdDay(table);
  await take(table, "roster", "league,name,number\nMill City,Otto Orbit,9\n");
  await table.as("organiser").day.close({ dayId: before });
  table.clock.pass(60 * 24);
  dayId = holdDay(table, { open: true });
  const list = "Lantern Bay,Vera Ropewalk,07\nLantern Bay,Zoë Brake,\nMill City,Moss Parcel,212\n";
  await take(table, "roster", `league,name,number\n${list}`);
  ids = Object.fromEntries(allAthletes(table.desk.store.db).map(({ name, id }) => [name.split(" ")[0], id]));
  checkIn(table, dayId, id("Vera"), 1);
  checkIn(table, dayId, id("Zoë"), 2);
});

function id(name: string): number {
  const found = ids[name];
  if (found === undefined) throw new Error(`There is no ${name}.`);
  return found;
}

const marks = () =>
  marksOfDay(table.desk.store.db, dayId).map(({ athleteId, test, variant, mark }) => [
    athleteId === id("Vera") ? "Vera" : "Zoë",
    test,
    variant,
    mark.state === "complete" ? mark.value : mark,
  ]);

const headers =
  "bib,league,number,name,test,variant,direction,reps,off at end,laps,extra,touches,standing reach,touch reach,time,finished,rounds done,entered by";

/** A sheet of results from rows of `field=value` pairs. */
function results(...rows: string[]): string {
  const fields = headers.split(",");
  const lines = rows.map((row) => {
    const given = new Map(row.split("; ").map((pair) => pair.split("=") as [string, string]));
    return fields.map((field) => given.get(field) ?? "").join(",");
  });
  return [headers, ...lines, ""].join("\r\n");
}

/** The worked examples of the protocols: 23 done, 3 off at the end are 20; 31 with 2 touches and 29 with none are 29.5. */
const paper = results(
  "bib=1; test=push-up; variant=full; reps=23; off at end=3; entered by=KL",
  "league=Lantern Bay; number=07; test=agility; direction=cw; laps=7; extra=3; touches=2",
  "league=lantern bay; name=vera ropewalk; test=agility; direction=ccw; laps=7; extra=1",
  "bib=1; test=vertical; standing reach=219.5; touch reach=262",
  "bib=1; test=vertical; standing reach=219.5; touch reach=262",
  "bib=1; test=vertical; standing reach=219.5; touch reach=262",
  "bib=2; test=core; time=3:29",
  "bib=2; test=endurance; finished=no; rounds done=2",
);

describe("results", () => {
  test("from paper become attempts and marks", async () => {
    const { counts } = await take(table, "results", paper);
    expect(counts).toEqual({ new: 8, changed: 0, known: 0, joined: 0, keptBack: 0, unusual: 0 });
    expect(marks()).toEqual([
      ["Vera", "push-up", "full", 20],
      ["Vera", "agility", "", 118],
      ["Vera", "vertical", "", 8500],
      ["Zoë", "core", "", 209],
      ["Zoë", "endurance", "", { state: "unfinished", rounds: 2, reps: 0 }],
    ]);
    const [first] = attemptsOfDay(table.desk.store.db, dayId);
    expect(first).toMatchObject({ source: "sheet", enteredBy: "KL", replaces: null });
  });

  test("with decimal commas between semicolons are read as with points between commas", async () => {
    const rows = [
      "1;vertical;219,5;262;",
      "1;vertical;219,5;261,5;",
      "1;vertical;219,5;261;",
      "2;core;;;2:31,9",
    ];
    const sheet = ["bib;test;standing_reach;touch_reach;time", ...rows, ""].join("\r\n");
    expect((await take(table, "results", sheet)).counts).toMatchObject({ new: 4, keptBack: 0 });
    expect(marks()).toEqual([
      ["Vera", "vertical", "", 8500],
      ["Zoë", "core", "", 151],
    ]);
  });

  test("with the columns' names of now are the rows that they were with the names of before", async () => {
    await take(table, "results", paper);
    const now = [
      ["off at end", "missed_at_end"],
      [",extra,", ",extra_quadrants,"],
      [",touches,", ",line_touches,"],
    ].reduce((text, [before = "", after = ""]) => text.replace(before, after), paper);
    expect((await lookAt(table, now)).unknown).toEqual([]);
    expect((await take(table, "results", now)).counts).toMatchObject({ new: 0, known: 8, keptBack: 0 });
  });

  test("twice is once, and three equal leaps stay three", async () => {
    await take(table, "results", paper);
    const before = attemptsOfDay(table.desk.store.db, dayId);
    expect((await take(table, "results", paper)).counts).toMatchObject({ new: 0, known: 8, keptBack: 0 });
    expect(attemptsOfDay(table.desk.store.db, dayId)).toEqual(before);
  });

  test("an attempt that was corrected away does not come back with its sheet", async () => {
    await take(table, "results", paper);
    const core = attemptsOfDay(table.desk.store.db, dayId).find((attempt) => attempt.test === "core");
    const ending = { reason: "wrong lane", by: "KL", at: "2026-11-15T10:00:00Z" };
    table.desk.store.write(["attempts"], (db) => voidAttempt(db, core?.id ?? "", ending));
    expect((await take(table, "results", paper)).counts).toMatchObject({ new: 0, known: 8 });
    expect(marks().some(([, test]) => test === "core")).toBe(false);
  });

  test("another value for a place that is taken is kept back with the store's own words", async () => {
    await take(table, "results", paper);
    const { counts, keptBack } = await take(
      table,
      "results",
      results(
        "bib=1; test=push-up; variant=full; reps=30; off at end=0",
        "bib=1; test=vertical; standing reach=219.5; touch reach=263",
      ),
    );
    expect(counts).toMatchObject({ new: 0, keptBack: 2 });
    expect(keptBack.map(({ line, reason }) => [line, reason])).toEqual([
      [2, { key: "test.push-up.taken", values: { by: "KL" } }],
      [3, { key: "test.vertical.taken", values: { by: "sheet" } }],
    ]);
    expect(marks()[0]).toEqual(["Vera", "push-up", "full", 20]);
  });

  test("one place twice in one sheet: the first stays", async () => {
    const sheet = results(
      "bib=2; test=core; time=60",
      "bib=2; test=core; time=61",
      "bib=2; test=core; time=60",
    );
    const { counts, keptBack } = await take(table, "results", sheet);
    expect(counts).toMatchObject({ new: 1, keptBack: 2 });
    expect(keptBack.map(({ line }) => line)).toEqual([3, 4]);
  });

  test("knee and full push-ups stand beside each other", async () => {
    const sheet = results(
      "bib=1; test=push-up; reps=20; off at end=0; variant=full",
      "bib=1; test=push-up; reps=30; off at end=0; variant=knee",
    );
    expect((await take(table, "results", sheet)).counts.new).toBe(2);
  });

  test("a blank variant, and how many were missed at the end, are asked once for the sheet and never assumed", async () => {
    const sheet = results(
      "bib=1; test=push-up; reps=23",
      "bib=2; test=push-up; reps=18; off at end=1; variant=knee",
      "bib=2; test=core; time=60",
    );
    const unsaid = await lookAt(table, sheet);
    expect(unsaid.asked).toEqual([
      { name: "variant", options: ["full", "knee"] },
      { name: "missed_at_end", options: ["0", "1", "2", "3"] },
    ]);
    expect(
      unsaid.keptBack.map(({ line, reason, also }) => [
        line,
        reason.key,
        ...also.map((each) => each.reason.key),
      ]),
    ).toEqual([[2, "sheets.row.blankVariant", "test.push-up.row.missedBlank"]]);
    expect(unsaid.counts).toMatchObject({ new: 2, keptBack: 1 });
    const blanks = { variant: "full", missed_at_end: "3" };
    const said = await lookAt(table, sheet, { blanks });
    expect(said.counts).toMatchObject({ new: 3, keptBack: 0 });
    expect(said.asked).toHaveLength(2);
    await take(table, "results", sheet, {}, blanks);
    // 23 beats with three missed at the end are 20, and not 23; what stands in a cell is never changed.
    expect(marks()).toEqual([
      ["Vera", "push-up", "full", 20],
      ["Zoë", "push-up", "knee", 17],
      ["Zoë", "core", "", 60],
    ]);
  });

  test("who is not here, or nobody, is told with what to do", async () => {
    table.desk.store.write(["entrants"], (db) => {
      const since = table.clock.at.toISOString();
      setEntrant(db, dayId, { athleteId: id("Zoë"), state: "not-testing", bib: null, since });
    });
    const rows = [
      "league=Mill City; number=212",
      "league=Mill City; number=9",
      "league=Lantern Bay; name=Zoë Brake",
      "bib=77",
      "bib=1; league=Mill City; number=212",
      "league=Lantern Bya; number=07",
      "league=Somewhere Else; number=1",
      "league=Lantern Bay; number=7",
      "league=Lantern Bay; number=99",
      "league=Lantern Bay; number=99; name=Vera Ropewalk",
      "league=Lantern Bay; name=Vera Ropewlk",
      "league=Lantern Bay; name=Nobody",
    ];
    const sheet = results(...rows.map((row) => `${row}; test=core; time=60`));
    const { keptBack, questions } = await lookAt(table, sheet);
    expect(questions.map(({ about, lines, candidates }) => [about, lines, candidates[0]])).toMatchObject([
      ["league", [7], { league: "Lantern Bay" }],
      ["person", [11], { name: "Vera Ropewalk", number: "07" }],
    ]);
    expect(keptBack.map(({ reason }) => [reason.key, reason.values?.near])).toEqual([
      ["sheets.row.notCheckedIn", undefined],
      ["sheets.row.notListed", undefined],
      ["sheets.row.notTesting", undefined],
      ["sheets.row.unknownBib", undefined],
      ["sheets.row.bibOfAnother", undefined],
      ["sheets.row.unknownLeague", undefined],
      ["sheets.row.nearNumber", "07"],
      ["sheets.row.unknownNumber", undefined],
      ["sheets.row.nearName", "Vera Ropewalk"],
      ["sheets.row.unknownName", undefined],
    ]);
  });

  test("what somebody did before they withdrew is taken, and told", async () => {
    table.desk.store.write(["entrants"], (db) => {
      const since = table.clock.at.toISOString();
      setEntrant(db, dayId, { athleteId: id("Zoë"), state: "withdrawn", bib: 2, since });
    });
    const { counts, rows } = await lookAt(table, results("bib=2; test=core; time=60"));
    expect(counts).toMatchObject({ new: 1, unusual: 1, keptBack: 0 });
    expect(rows[0]?.unusual?.key).toBe("sheets.row.withdrawn");
  });

  test("what can't be is kept back, what is unusual is taken and told", async () => {
    table.desk.store.write(["entrants"], (db) =>
      leaveOut(db, dayId, {
        athleteId: id("Zoë"),
        test: "agility",
        kind: "skip",
        reason: "blister",
        decidedBy: "KL",
        at: table.clock.at.toISOString(),
      }),
    );
    const sheet = results(
      "bib=1; test=push-up; variant=full; reps=301; off at end=0",
      "bib=2; test=push-up; variant=full; reps=120; off at end=0",
      "bib=1; test=vertical; standing reach=219; touch reach=218",
      "league=Lantern Bay; number=07; name=Somebody; test=core; time=60",
      "bib=2; test=agility; direction=cw; laps=7",
      "bib=1; test=endurance; time=3.00",
    );
    const { counts, keptBack, rows, questions } = await lookAt(table, sheet);
    expect(counts).toMatchObject({ new: 2, keptBack: 3, unusual: 2 });
    expect(questions.map(({ lines }) => lines)).toEqual([[5]]);
    expect(keptBack.map(({ line, reason }) => [line, reason.key])).toEqual([
      [2, "test.push-up.plausibility.tooHigh"],
      [4, "test.vertical.plausibility.touchBelowReach"],
      [7, "units.time.ambiguous"],
    ]);
    expect(rows.map(({ line, unusual }) => [line, unusual?.key])).toEqual([
      [3, "test.push-up.plausibility.high"],
      [6, "sheets.row.leavesOut"],
    ]);
  });

  test("a mark far from the athlete's own last is asked about", async () => {
    await take(
      table,
      "past",
      "league,number,date,test,variant,mark\nLantern Bay,07,2026-03-14,push-up,full,20\n",
    );
    const { rows } = await lookAt(table, results("bib=1; test=push-up; variant=full; reps=40; off at end=0"));
    expect(rows[0]?.unusual).toEqual({
      key: "plausibility.differsFromLast",
      values: { last: "20", value: "40" },
    });
  });

  test("need an open day", async () => {
    await table.as("organiser").day.close({ dayId });
    holdDay(table);
    expect(await refusalOfSheet(lookAt(table, paper))).toBe("day.notOpen");
    expect((await refusalOf(take(table, "results", paper))).key).toBe("day.notOpen");
  });

  test("go in whole or not at all", async () => {
    const { db } = table.desk.store;
    connectionOf(db).exec(`CREATE TRIGGER full_disk BEFORE INSERT ON attempt WHEN NEW.test = 'endurance'
      BEGIN SELECT RAISE (ABORT, 'no room'); END`);
    await expect(take(table, "results", paper)).rejects.toThrow("no room");
    expect(attemptsOfDay(db, dayId)).toEqual([]);
    expect(marks()).toEqual([]);
  });
});

describe("past results", () => {
  const past = [
    "league,number,name,date,test,variant,mark,unit",
    "Lantern Bay,07,,2026-03-14,push-up,full,20,reps",
    "Lantern Bay,,zoe brake,2026-03-14,agility,,29.5,landings",
    "Mill City,9,,2025-11-02,endurance,,6:12.4,m:ss",
    "Mill City,9,,2025-11-02,endurance,,6:12.4,m:ss",
    "Mill City,9,,2025-11-02,endurance,,6:20,m:ss",
    "Mill City,10,,2025-11-02,endurance,,6:20,m:ss",
    "",
  ].join("\r\n");

  test("are taken, the same again is known, another value for the same day is kept back", async () => {
    const { counts, keptBack } = await take(table, "past", past);
    expect(counts).toMatchObject({ new: 3, known: 1, keptBack: 2 });
    expect(keptBack.map(({ line, reason }) => [line, reason])).toEqual([
      [6, { key: "sheets.row.otherMark", values: { date: "2025-11-02", held: "6:12.4" } }],
      [7, { key: "sheets.row.unknownNumber", values: { number: "10", league: "Mill City" } }],
    ]);
    expect((await take(table, "past", past)).counts).toMatchObject({ new: 0, known: 4, keptBack: 2 });
    const held = connectionOf(table.desk.store.db).prepare("SELECT value FROM past_mark ORDER BY test").all();
    expect(held).toEqual([{ value: 118 }, { value: 372_400 }, { value: 20 }]);
  });

  test("need no day", async () => {
    await table.as("organiser").day.close({ dayId });
    expect((await take(table, "past", past)).counts.new).toBe(3);
  });
});

test("the id of an attempt from a sheet is a UUID of its content (RFC 9562, version 8)", () => {
  const attempt = { dayId: 1, athleteId: 2, test: "core" as const, variant: "", seen: { held: 60_000 } };
  expect(attemptId(attempt, 1)).toMatch(
    /^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
  );
  expect(attemptId(attempt, 1)).toBe(attemptId({ ...attempt }, 1));
  const others = [attemptId(attempt, 2), attemptId({ ...attempt, athleteId: 3 }, 1)];
  expect(new Set([attemptId(attempt, 1), ...others]).size).toBe(3);
});

test("property: no change of a good sheet makes it throw anything but a refusal", async () => {
  const bytes = new TextEncoder().encode(paper);
  const change = fc.record({
    at: fc.nat({ max: bytes.length - 1 }),
    cut: fc.nat({ max: 12 }),
    put: fc.uint8Array({ maxLength: 6 }),
  });
  const kinds = fc.constantFrom(...sheetKinds);
  await fc.assert(
    fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 5 }), kinds, async (changes, kind) => {
      const changed = changes.reduce(
        (all, { at, cut, put }) => Uint8Array.from([...all.slice(0, at), ...put, ...all.slice(at + cut)]),
        bytes,
      );
      try {
        await takeSheet(table.desk, kind, changed);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    }),
    { numRuns: 300 },
  );
});
