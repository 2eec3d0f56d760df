import { describe, expect, test } from "vitest";
import { takeSheet } from "../../electron/api/intake/sheet.ts";
import { sheetLimits } from "../../electron/domain/sheets/limits.ts";
import { allAthletes } from "../../electron/store/tables/athletes.ts";
import { entrants } from "../../electron/store/tables/entrants.ts";
import { connectionOf } from "../store/connection.ts";
import { odsOf, xlsxOf } from "../unit/sheets/workbooks.ts";
import { refusalOf, testDesk } from "./desk.ts";
import { bring, checkIn, holdDay, look, lookAt, refusalOfSheet, take } from "./sheets.ts";

const roster = [
  "League,Name,Number,Birth year,Category,Board,Share",
  "Lantern Bay,Vera Ropewalk,07,1996,women,name,yes",
  "Lantern Bay,Zoë Brake,7,2001,open,,",
  'Mill City,"Parcel, Moss",,2012,,hidden,no',
  "Mill City,,55,,,,",
  "Mill City,Otto Orbit,12345,,,,",
  "lantern bay,Vera V.,07,,,,",
  "",
].join("\r\n");

const rosterCounts = { new: 3, changed: 0, known: 0, joined: 3, keptBack: 3, unusual: 0 };

describe("a roster", () => {
  test("is read, looked at and taken in; bad rows stay outside with line and reason", async () => {
    const table = testDesk();
    const dayId = holdDay(table);
    const uploadId = await bring(table, roster);
    const preview = await look(table, { uploadId });
    expect(preview).toMatchObject({ kind: "roster", counts: rosterCounts, missing: [], unknown: [] });
    expect(preview.keptBack.map(({ line, field, reason }) => [line, field, reason.key])).toEqual([
      [5, "name", "sheets.row.empty"],
      [6, "number", "sheets.row.number"],
      [7, "number", "sheets.row.numberTwice"],
    ]);
    expect(allAthletes(table.desk.store.db)).toEqual([]);

    const taken = await table.as("organiser").intake.take({ uploadId, kind: "roster" });
    expect(taken.counts).toEqual(rosterCounts);
    const athletes = allAthletes(table.desk.store.db);
    expect(
      athletes.map(({ league, name, number, board, share }) => [league, name, number, board, share]),
    ).toEqual([
      ["Lantern Bay", "Vera Ropewalk", "07", "name", true],
      ["Lantern Bay", "Zoë Brake", "7", "bib", false],
      ["Mill City", "Parcel, Moss", "", "hidden", false],
    ]);
    expect(entrants(table.desk.store.db, dayId).map(({ state }) => state)).toEqual(Array(3).fill("expected"));
    expect(table.faults).toEqual([]);
  });

  test("twice is once", async () => {
    const table = testDesk();
    holdDay(table);
    await take(table, "roster", roster);
    const before = allAthletes(table.desk.store.db);
    const again = await take(table, "roster", roster);
    expect(again.counts).toEqual({ ...rosterCounts, new: 0, known: 3, joined: 0 });
    expect(allAthletes(table.desk.store.db)).toEqual(before);
  });

  test("on another day it puts those who are known onto that day's list", async () => {
    const table = testDesk();
    const first = holdDay(table);
    await take(table, "roster", roster);
    await table.as("organiser").day.close({ dayId: first });
    table.clock.pass(60 * 24 * 90);
    const second = holdDay(table);
    const { counts } = await take(table, "roster", roster);
    expect(counts).toMatchObject({ new: 0, known: 3, joined: 3 });
    expect(entrants(table.desk.store.db, second).length).toBe(3);
  });

  test("changes what it says and erases nothing where it is blank", async () => {
    const table = testDesk();
    holdDay(table);
    await take(table, "roster", roster);
    const sheet = "league,name,number,birth year,category,board\nLANTERN BAY,Vera Ropewalk,07,,men,bib\n";
    const preview = await lookAt(table, sheet);
    expect(preview.rows[0]).toMatchObject({ status: "changed", was: { category: "women", screen: "name" } });
    await take(table, "roster", sheet);
    const [vera] = allAthletes(table.desk.store.db);
    expect(vera).toMatchObject({ birthYear: 1996, category: "men", board: "bib", share: true });
  });

  test("a number that comes later belongs to the same athlete, and a missing one loses nothing", async () => {
    const table = testDesk();
    holdDay(table);
    await take(table, "roster", roster);
    const later = await take(table, "roster", 'league,name,number\nMill City,"Parcel, Moss",88\n');
    expect(later.counts).toMatchObject({ new: 0, changed: 1 });
    const without = await take(
      table,
      "roster",
      'league,name\nMill City,"parcel moss"\nLantern Bay,Zoe Brake\n',
    );
    expect(without.counts).toMatchObject({ new: 0, changed: 2 });
    expect(allAthletes(table.desk.store.db).map(({ number }) => number)).toEqual(["07", "7", "88"]);
  });

  test("does not touch what an athlete answered at the table", async () => {
    const table = testDesk();
    holdDay(table);
    await take(table, "roster", roster);
    connectionOf(table.desk.store.db).exec(
      "UPDATE athlete SET asked = 1, board = 'hidden', share = 0 WHERE number = '07'",
    );
    const { counts } = await take(table, "roster", roster);
    expect(counts).toMatchObject({ changed: 0, known: 3 });
    expect(allAthletes(table.desk.store.db)[0]).toMatchObject({ board: "hidden", share: false });
  });

  test("needs a day to work on", async () => {
    const table = testDesk();
    expect(await refusalOfSheet(lookAt(table, roster))).toBe("day.none");
    expect((await refusalOf(take(table, "roster", roster))).key).toBe("day.none");
  });

  test("goes in whole or not at all", async () => {
    const table = testDesk();
    holdDay(table);
    const { db } = table.desk.store;
    connectionOf(db).exec(`CREATE TRIGGER full_disk BEFORE INSERT ON athlete WHEN NEW.name = 'Parcel, Moss'
      BEGIN SELECT RAISE (ABORT, 'no room'); END`);
    await expect(take(table, "roster", roster)).rejects.toThrow("no room");
    expect(allAthletes(db)).toEqual([]);
    expect(connectionOf(db).prepare("SELECT count(*) AS n FROM league").get()).toEqual({ n: 0 });
    connectionOf(db).exec("DROP TRIGGER full_disk");
    expect((await take(table, "roster", roster)).counts).toEqual(rosterCounts);
  });

  test("a header without league is told, and a mapping puts it right", async () => {
    const table = testDesk();
    holdDay(table);
    const sheet = "Crew,name\nLantern Bay,Vera Velocity\n";
    const preview = await lookAt(table, sheet);
    expect(preview).toMatchObject({ missing: ["league"], unknown: ["Crew"], rows: [], keptBack: [] });
    expect((await refusalOf(take(table, "roster", sheet))).key).toBe("sheets.missing.league");
    const { counts } = await take(table, "roster", sheet, { league: "Crew" });
    expect(counts.new).toBe(1);
  });

  test("is taken as it was meant where a spreadsheet would have run it", async () => {
    const table = testDesk();
    holdDay(table);
    await take(table, "roster", `league,name\nMill City,"'=1+2"";=1+2"\nMill City,@home\n`);
    expect(allAthletes(table.desk.store.db).map(({ name }) => name)).toEqual(['=1+2";=1+2', "@home"]);
  });

  test("in Windows-1252 with semicolons is read too", async () => {
    const table = testDesk();
    holdDay(table);
    const bytes = Uint8Array.from("league;name\r\nMühle;Zoë\r\n", (sign) => sign.charCodeAt(0));
    await take(table, "roster", bytes);
    expect(allAthletes(table.desk.store.db)[0]).toMatchObject({ league: "Mühle", name: "Zoë" });
  });
});

test.each([
  [".xlsx", xlsxOf],
  [".ods", odsOf],
] as const)("a roster in %s is the same as in text", async (_kind, make) => {
  const table = testDesk();
  holdDay(table);
  const rows = [
    ["League", "Name", "Number", "Birth year", "Share"],
    ["Lantern Bay", "Vera Velocity", "07", 1996, true],
    ["Mill City", "=1+2", 55, null, null],
  ];
  const preview = await lookAt(table, make([{ name: "Sheet 1", rows }]));
  expect(preview).toMatchObject({ kind: "roster", counts: { new: 2, keptBack: 0 } });
  await take(table, "roster", make([{ name: "Sheet 1", rows }]));
  expect(
    allAthletes(table.desk.store.db).map(({ name, number, birthYear, share }) => [
      name,
      number,
      birthYear,
      share,
    ]),
  ).toEqual([
    ["Vera Velocity", "07", 1996, true],
    ["=1+2", "55", null, false],
  ]);
});

test("the columns of a sheet are read as they were said last time, and no header is kept", async () => {
  const table = testDesk();
  holdDay(table);
  const sheet = (name: string) => `Crew,Name\nLantern Bay,${name}\n`;
  await take(table, "roster", sheet("Vera Velocity"), { league: "Crew" });
  const again = await lookAt(table, sheet("Moss Piglet"), { recall: true });
  expect(again).toMatchObject({ missing: [], mapping: { league: "Crew" }, counts: { new: 1 } });
  // Whoever says otherwise is heard, and another form is another sheet.
  expect((await lookAt(table, sheet("Moss Piglet"))).missing).toEqual(["league"]);
  const other = await lookAt(table, "Crew,Name,Number\nLantern Bay,Moss Piglet,9\n", { recall: true });
  expect(other.missing).toEqual(["league"]);
  const kept = connectionOf(table.desk.store.db).prepare("SELECT * FROM sheet_form").all();
  expect(kept).toEqual([{ form: expect.stringMatching(/^[0-9a-f]{64}$/), columns: '{"league":0}' }]);
});

describe("bad sheets change nothing", () => {
  const png = Uint8Array.of(
    0x89,
    0x50,
    0x4e,
    0x47,
    0x0d,
    0x0a,
    0x1a,
    0x0a,
    0,
    0,
    0,
    0x0d,
    0x49,
    0x48,
    0x44,
    0x52,
  );

  test.each([
    ["an empty file", "", "sheets.empty"],
    ["a picture named .csv", png, "sheets.picture"],
    ["300 columns", `league,name${",more".repeat(298)}\nA,B\n`, "sheets.tooManyColumns"],
    ["NUL bytes", "league,name\nA,\0B\n", "sheets.nul"],
    ["a lone quote in the header", '"league,name\nA,B\n', "sheets.quotes"],
    ["headers alone", "league,name\n", "sheets.noRows"],
  ])("%s", async (_what, sheet, key) => {
    const table = testDesk();
    holdDay(table);
    expect(await refusalOfSheet(lookAt(table, sheet))).toBe(key);
    expect((await refusalOf(take(table, "roster", sheet))).key).toBe(key);
    expect(table.desk.store.seq()).toBe(1);
    expect(table.faults).toEqual([]);
  });

  test("a lone quote in a row keeps back that row", async () => {
    const table = testDesk();
    holdDay(table);
    const { counts, keptBack } = await take(table, "roster", 'league,name\nA,Ann\nA,"Bea\nA,Cleo\n');
    expect(counts).toMatchObject({ new: 2, keptBack: 1 });
    expect(keptBack).toMatchObject([{ line: 3, reason: { key: "sheets.row.quotes" }, cells: ["A", '"Bea'] }]);
  });

  test("200 MB are refused long before they are read", async () => {
    const table = testDesk();
    let pulled = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        pulled += 1;
        if (pulled > 200) controller.close();
        else controller.enqueue(new Uint8Array(1024 * 1024));
      },
    });
    expect(await refusalOfSheet(bring(table, endless))).toBe("sheets.tooBig");
    expect(pulled * 1024 * 1024).toBeLessThan(2 * sheetLimits.bytes);
  });

  test("a sheet that is not at hand any more says so", async () => {
    const table = testDesk();
    const first = await bring(table, roster);
    for (let more = 0; more < 8; more += 1) await bring(table, roster);
    expect(await refusalOfSheet(look(table, { uploadId: first }))).toBe("sheets.gone");
  });

  test.each(["check-in", "station", "board"] as const)("%s may not", async (who) => {
    const table = testDesk();
    const uploadId = await bring(table, roster);
    const call = table.as(who).intake.take({ uploadId, kind: "roster" });
    expect((await refusalOf(call)).key).toBe("door.forbidden");
  });
});

test("the kept-back rows come as a sheet that can be corrected and taken in", async () => {
  const table = testDesk();
  holdDay(table);
  const uploadId = await bring(table, roster);
  await table.as("organiser").intake.take({ uploadId, kind: "roster" });
  const { name, text } = await table.as("organiser").intake.keptBackSheet({ uploadId });
  expect(name).toBe("kept-back-roster.csv");
  expect(text.split("\r\n").slice(0, 3)).toEqual([
    "\uFEFFLeague,Name,Number,Birth year,Category,Board,Share,line,reason",
    "Mill City,,55,,,,,5,name: This can't be left empty.",
    "Mill City,Otto Orbit,12345,,,,,6,number: A skater's number has up to four digits and nothing else.",
  ]);
  const lines = text
    .replace("Mill City,,55", "Mill City,Rita Ramp,55")
    .replace("12345", "1234")
    .split("\r\n");
  // The number that two have would be asked about now.
  const corrected = lines.filter((line) => !line.includes("Vera V.")).join("\r\n");
  const { counts } = await take(table, "roster", corrected);
  expect(counts).toMatchObject({ new: 2, known: 0, keptBack: 0 });
});

test("rows not imported of a sheet with semicolons are saved with semicolons, as its spreadsheet opens it", async () => {
  const table = testDesk();
  holdDay(table);
  const uploadId = await bring(
    table,
    "League;Name;Number\nMill City;Otto, the Orbit;12345\nMill City;Rita;7\n",
  );
  await table.as("organiser").intake.take({ uploadId, kind: "roster" });
  const { text } = await table.as("organiser").intake.keptBackSheet({ uploadId });
  expect(text.split("\r\n").slice(0, 2)).toEqual([
    "\uFEFFLeague;Name;Number;line;reason",
    "Mill City;Otto, the Orbit;12345;2;number: A skater's number has up to four digits and nothing else.",
  ]);
  const { counts } = await take(table, "roster", text.replace("12345", "1234"));
  expect(counts).toMatchObject({ new: 1, keptBack: 0 });
});

test("examples have the columns' names of now, and a roster with a column board is still read", async () => {
  const table = testDesk();
  holdDay(table);
  const { intake } = table.as("organiser");
  const heads = await Promise.all(
    (["roster", "results"] as const).map(
      async (name) => (await intake.example({ name })).text.split("\r\n")[0],
    ),
  );
  expect(heads[0]).toContain(",guardian_consent,screen,share");
  expect(heads[1]).toContain(",reps,missed_at_end,");
  expect(heads[1]).toContain(",laps,extra_quadrants,line_touches,");
  for (const [number, head] of ["board", "screen"].entries()) {
    const sheet = `league,name,number,${head}\nMill City,Rita Ramp ${number},5${number},hidden\n`;
    expect((await take(table, "roster", sheet)).counts).toMatchObject({ new: 1, keptBack: 0 });
  }
  expect(allAthletes(table.desk.store.db).map(({ board }) => board)).toEqual(["hidden", "hidden"]);
});

/** The everyday five: what each is, what of it is new beside the roster's two people, and what a person has to say. */
const everyday = [
  ["roster", "roster", { known: 2 }, {}],
  ["roster-titled", "roster", { known: 2, new: 1 }, { league: "Lantern Bay" }],
  ["results", "results", { new: 2 }, {}],
  ["past", "past", { new: 2 }, {}],
  ["past-wide", "past", { new: 7 }, {}],
] as const;

test.each(everyday)(
  "the example %s goes in whole, and asks for nothing but what it shows",
  async (...row) => {
    const [name, kind, counts, said] = row;
    const table = testDesk();
    const dayId = holdDay(table, { open: true });
    const { intake } = table.as("organiser");
    const { text } = await intake.example({ name: "roster" });
    expect((await take(table, "roster", text)).counts).toMatchObject({ new: 2, keptBack: 0 });
    for (const { id } of allAthletes(table.desk.store.db)) checkIn(table, dayId, id, id);
    const example = await intake.example({ name });
    expect(example.name).toBe(`${name}-example.csv`);
    const uploadId = await bring(table, example.text);
    const unsaid = await look(table, { uploadId });
    expect({ kind: unsaid.kind, missing: unsaid.missing, asks: unsaid.asksDateOrder }).toEqual({
      ...{ kind, asks: false },
      missing: "league" in said ? ["league"] : [],
    });
    const preview = await look(table, { uploadId, ...said });
    expect(preview.counts).toMatchObject({ keptBack: 0, unusual: 0, changed: 0, ...counts });
    expect((await intake.take({ uploadId, kind, ...said })).counts).toMatchObject({ keptBack: 0, ...counts });
    expect((await intake.take({ uploadId, kind, ...said })).counts).toMatchObject({ new: 0, changed: 0 });
    expect(table.faults).toEqual([]);
  },
);

test("5,000 rows show progress and never hold up the desk for long", async () => {
  const table = testDesk();
  holdDay(table);
  const rows = Array.from({ length: 5000 }, (_, row) => `League ${row % 40},Skater ${row},${row % 10_000}`);
  const uploadId = await bring(table, `league,name,number\n${rows.join("\n")}\n`);
  // Turns of the loop, in each of which the desk does whatever else is asked.
  let turns = 0;
  let isReading = true;
  function turn(): void {
    turns += 1;
    if (isReading) setImmediate(turn);
  }
  setImmediate(turn);
  let steps = 0;
  for await (const stage of await table.as("organiser").intake.read({ uploadId })) {
    if (stage.stage === "reading") steps += 1;
    else expect(stage).toMatchObject({ stage: "preview", preview: { counts: { new: 5000 } } });
  }
  isReading = false;
  expect(steps).toBeGreaterThan(10);
  // Without giving way it would all be one turn.
  expect(turns).toBeGreaterThan(10);
});

test("reading and taking are one path for every caller", async () => {
  const table = testDesk();
  holdDay(table);
  const { counts, keptBack } = await takeSheet(table.desk, "roster", new TextEncoder().encode(roster));
  expect(counts).toEqual(rosterCounts);
  expect(keptBack.map(({ line }) => line)).toEqual([5, 6, 7]);
});
