import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { Desk, StoreKind } from "../../electron/api/door/desk.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import { appRouter } from "../../electron/api/router.ts";
import type { Role } from "../../electron/domain/lock/roles.ts";
import { demoSheetsIn } from "../../electron/host/demo-sheets.ts";
import { storeOpener } from "../../electron/host/stores.ts";
import { connectionOf } from "../store/connection.ts";
import { refusalOf, seeded } from "./desk.ts";

const sheets = demoSheetsIn(new URL("../../resources/demo", import.meta.url).pathname);

let folder: string;
let desk: Desk;
/** Makes the next opening of that store fail. */
let broken: StoreKind | null;
const now = new Date("2027-03-13T11:00:00Z");

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-demo-"));
  broken = null;
  const open = storeOpener(folder, undefined);
  desk = createDesk({
    open(kind) {
      if (kind === broken) throw new Error("the disk is full");
      return open(kind);
    },
    now: () => now,
    monotonic: () => ({ ms: 0, boot: "hall" }),
    random: seeded(7),
    demoSheets: sheets,
  });
});

afterEach(() => {
  desk.close();
  rmSync(folder, { recursive: true });
});

function as(who: Role) {
  return appRouter.createCaller({ who, desk });
}

test("the demonstration opens while a minute ends", async () => {
  // Reading its sheets takes a while: here a quarter of a minute each time somebody looks at the clock.
  const start = now.getTime();
  let looks = 0;
  Object.defineProperty(desk, "now", { value: () => new Date(start + 15_000 * looks++) });
  await as("organiser").day.openDemo();
  expect((await as("organiser").day.current()).kind).toBe("demo");
});

test("the demonstration is a day that is being held today, with something to see at every place", async () => {
  await as("organiser").day.openDemo();
  const { kind, day } = await as("organiser").day.current();
  expect({ kind, day }).toMatchObject({
    kind: "demo",
    day: { title: "Demo day", state: "open", date: "2027-03-13" },
  });
  const { counts, tests, needs } = await as("organiser").day.overview();
  expect(counts.testing).toBeGreaterThan(40);
  expect(counts.expected).toBeGreaterThan(3);
  expect(counts).toMatchObject({ "no-show": 1, "not-testing": 1, withdrawn: 2 });
  for (const each of tests) {
    expect.soft(each, each.test).toMatchObject({ waiting: expect.any(Number), bests: expect.any(Number) });
    expect.soft(Math.min(each.waiting, each.done, each.bests, each.firsts), each.test).toBeGreaterThan(0);
  }
  expect(needs.map(({ sentence }) => sentence.key)).toEqual(["test.vertical.called", "test.agility.begun"]);
  const wall = await as("board").board.view();
  expect(wall).toMatchObject({ demo: true, day: { title: "Demo day" } });
  expect(wall.newest).toHaveLength(12);
  expect(wall.calls.length).toBeGreaterThan(1);
});

test("about two thirds of the sheet is entered, by the same code as a sheet, and nobody before they came", async () => {
  await as("organiser").day.openDemo();
  const entered = connectionOf(desk.store.db)
    .prepare<[], { count: number }>("SELECT count(*) AS count FROM attempt")
    .get();
  const rows = new TextDecoder().decode(sheets().results).trim().split("\r\n").length - 1;
  expect((entered?.count ?? 0) / rows).toBeGreaterThan(0.6);
  expect((entered?.count ?? 0) / rows).toBeLessThan(0.75);
  const early = connectionOf(desk.store.db).prepare<[], { name: string }>(
    `SELECT name FROM attempt JOIN entrant USING (day_id, athlete_id) JOIN athlete ON athlete.id = athlete_id
     WHERE attempt.at <= since AND state = 'testing'`,
  );
  expect(early.all()).toEqual([]);
});

test("the earlier days lie 17 and 34 weeks back, and everybody keeps the age they were invented with", async () => {
  await as("organiser").day.openDemo();
  const { db } = desk.store;
  const dates = connectionOf(db)
    .prepare<[], { date: string }>("SELECT DISTINCT date FROM past_mark ORDER BY date")
    .all();
  // 13 March 2027 less 238 and 119 days, counted on a calendar.
  expect(dates).toEqual([{ date: "2026-07-18" }, { date: "2026-11-14" }]);
  const years = connectionOf(db).prepare<[], { from: number; to: number }>(
    `SELECT min(birth_year) AS "from", max(birth_year) AS "to" FROM athlete`,
  );
  expect(years.get()).toEqual({ from: 1980, to: 2010 });
});

test("the bundle of the demonstration keeps rows, holds others back, and says what it is", async () => {
  await as("organiser").day.openDemo();
  const preview = await as("organiser").bundle.preview();
  expect(preview).toMatchObject({ demo: true, k: 5 });
  expect(preview?.rows.length).toBeGreaterThan(30);
  expect(preview?.held.map(({ reason }) => reason)).toEqual(
    expect.arrayContaining(["no-share", "not-complete", "too-few"]),
  );
});

test("opening the demonstration twice gives the same day again", async () => {
  await as("organiser").day.openDemo();
  const first = await as("organiser").day.floor();
  await as("organiser").day.close({ dayId: 1 });
  await as("organiser").day.openDemo();
  expect(await as("organiser").day.floor()).toEqual(first);
});

test("the own day is as it was, whatever happens in the demonstration", async () => {
  await as("organiser").day.create({ date: "2027-03-14", title: "Spring testing day", sure: true });
  const before = await as("organiser").day.current();
  await as("organiser").day.openDemo();
  await as("organiser").day.leaveDemo();
  expect(await as("organiser").day.current()).toEqual(before);
  await as("organiser").day.leaveDemo();
  expect(await as("organiser").day.current()).toEqual(before);
  expect(readdirSync(folder)).toContain("demo.sqlite");
});

test("windows hear that they must read everything again, after the demonstration is filled", async () => {
  const heard: { topics: readonly string[]; people: number }[] = [];
  desk.news.listen(({ topics }) => {
    const counted = connectionOf(desk.store.db).prepare<[], { people: number }>(
      "SELECT count(*) AS people FROM athlete",
    );
    heard.push({ topics, people: counted.get()?.people ?? 0 });
  });
  await as("organiser").day.openDemo();
  expect(heard.at(-1)).toEqual({
    topics: ["day", "people", "entrants", "attempts", "calls"],
    people: 60,
  });
  await as("organiser").day.leaveDemo();
  expect(heard.at(-1)).toEqual({ topics: ["all"], people: 0 });
});

test("when the demonstration can't be opened, the own store stays in use", async () => {
  await as("organiser").day.create({ date: "2027-03-14", title: "Spring testing day", sure: true });
  broken = "demo";
  await expect(as("organiser").day.openDemo()).rejects.toThrow("the disk is full");
  expect(await as("organiser").day.current()).toMatchObject({
    kind: "own",
    day: { title: "Spring testing day" },
  });
});

test("no day of one's own is begun in what is thrown away", async () => {
  await as("organiser").day.openDemo();
  await as("organiser").day.close({ dayId: 1 });
  const create = as("organiser").day.create({ date: "2027-03-14", title: "Spring testing day", sure: true });
  expect(await refusalOf(create)).toEqual({ key: "day.inDemo" });
});

test("only the organiser opens and leaves the demonstration", async () => {
  for (const role of ["check-in", "station", "board"] as const) {
    await expect(as(role).day.openDemo()).rejects.toMatchObject({ code: "FORBIDDEN" });
    await expect(as(role).day.leaveDemo()).rejects.toMatchObject({ code: "FORBIDDEN" });
  }
});
