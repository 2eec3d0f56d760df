import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { choicesOf } from "../../electron/api/intake/choices.ts";
import { type PlannedSheet, planSheet, readSheet } from "../../electron/api/intake/sheet.ts";
import type { WritableDb } from "../../electron/store/connection/database.ts";
import { allAthletes, updateAthlete } from "../../electron/store/tables/athletes.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { setDayState } from "../../electron/store/tables/days.ts";
import { leaveOut, setEntrant } from "../../electron/store/tables/entrants.ts";
import { rebuildMarks } from "../../electron/store/tables/marks.ts";
import { recordAttempt, voidAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "../store/connection.ts";
import { dump } from "../store/hall.ts";
import { type TestDesk, testDesk } from "./desk.ts";
import { checkIn, holdDay, take } from "./sheets.ts";

const at = "2026-11-14T09:30:00.000Z";
const bibs = [1, 2, 3, 4];

/** An open day with four athletes here. */
async function hall(): Promise<{ table: TestDesk; dayId: number; ids: number[] }> {
  const table = testDesk();
  const dayId = holdDay(table, { open: true });
  await take(
    table,
    "roster",
    `league,name,number\n${bibs.map((bib) => `Mill City,Skater ${bib},${bib}\n`).join("")}`,
  );
  const ids = allAthletes(table.desk.store.db).map(({ id }) => id);
  for (const [index, id] of ids.entries()) checkIn(table, dayId, id, index + 1);
  return { table, dayId, ids };
}

const kinds = [
  { cells: "core,,60,", test: "core", seen: { held: 70_000 } },
  { cells: "agility,cw,,7", test: "agility", seen: { direction: "cw", laps: 6, extra: 1, touches: 0 } },
  { cells: "agility,ccw,,6", test: "agility", seen: { direction: "ccw", laps: 6, extra: 2, touches: 0 } },
] as const;

const rowOf = fc.record({
  bib: fc.constantFrom(1, 2, 3),
  kind: fc.nat(kinds.length - 1),
  time: fc.constantFrom("", "09:05", "09:20"),
});
const entryOf = fc.record({
  bib: fc.constantFrom(...bibs),
  kind: fc.nat(kinds.length - 1),
  performed: fc.constantFrom(null, "2026-11-14T09:10:00.000Z", "2026-11-14T08:55:00.000Z"),
  isVoid: fc.boolean(),
});
type Entry = typeof entryOf extends fc.Arbitrary<infer Each> ? Each : never;

function sheetOf(rows: readonly { bib: number; kind: number; time: string }[]): string {
  const lines = rows.map(({ bib, kind, time }) => `${bib},${kinds[kind]?.cells},${time}`);
  return ["bib,test,direction,time,laps,done at", ...lines, ""].join("\n");
}

/** Enters as a station does; a place that is taken stays as it is. */
function enter(db: WritableDb, dayId: number, athleteId: number, { kind, performed, isVoid }: Entry): void {
  const each = kinds[kind] ?? kinds[0];
  const common = { id: randomUUID(), athleteId, variant: "", enteredBy: "QA", note: "", at, replaces: null };
  const held = attemptsOfDay(db, dayId).filter((one) => one.athleteId === athleteId && one.void === null);
  const slot = "direction" in each.seen ? each.seen.direction : "";
  if (held.some((one) => one.test === each.test && one.slot === slot)) return;
  recordAttempt(db, dayId, { ...common, test: each.test, seen: each.seen, source: "station", performed });
  if (isVoid) voidAttempt(db, common.id, { reason: "Slip", by: "QA", at });
}

test("property: the marks of a sheet are those that its attempts come to one by one", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(entryOf, { maxLength: 5 }),
      fc.array(rowOf, { minLength: 1, maxLength: 8 }),
      async (before, rows) => {
        const { table, dayId, ids } = await hall();
        table.clock.pass(30);
        table.desk.store.write([], (db) => {
          for (const each of before) enter(db, dayId, ids[each.bib - 1] ?? 0, each);
        });
        await take(table, "results", sheetOf(rows));
        const taken = dump(table.desk.store.db);
        table.desk.store.write([], (db) => rebuildMarks(db));
        expect(taken.get("mark")).toEqual(dump(table.desk.store.db).get("mark"));
        table.desk.close();
      },
    ),
    { numRuns: 40 },
  );
});

/** What others do between a plan and its writing. */
const changes: Readonly<Record<string, (db: WritableDb, dayId: number, id: number) => void>> = {
  nothing: () => {},
  core: (db, dayId, id) => enter(db, dayId, id, { bib: 0, kind: 0, performed: null, isVoid: false }),
  clockwise: (db, dayId, id) => enter(db, dayId, id, { bib: 0, kind: 1, performed: null, isVoid: false }),
  void: (db, dayId, id) => {
    const [own] = attemptsOfDay(db, dayId).filter((each) => each.athleteId === id && each.void === null);
    if (own !== undefined) voidAttempt(db, own.id, { reason: "Slip", by: "QA", at });
  },
  leaves: (db, dayId, athleteId) =>
    leaveOut(db, dayId, { athleteId, test: "core", kind: "skip", reason: "knee", decidedBy: "QA", at }),
  goes: (db, dayId, athleteId) =>
    setEntrant(db, dayId, { athleteId, state: "withdrawn", bib: athleteId, since: at }),
  "changes bibs": (db, dayId, athleteId) =>
    setEntrant(db, dayId, { athleteId, state: "testing", bib: 90 + athleteId, since: at }),
  renamed: (db, _dayId, id) => {
    const own = allAthletes(db).find((each) => each.id === id);
    if (own !== undefined) updateAthlete(db, id, { ...own, name: "Another Name" });
  },
  closes: (db, dayId) => setDayState(db, dayId, "closed"),
};

const told = ({ counts, taken, keptBack }: PlannedSheet) =>
  JSON.stringify([counts, taken.map(({ cells: _, ...row }) => row), keptBack]);

test("property: a plan that holds is the plan of now, and one whose facts have changed does not hold", async () => {
  const held = { kept: 0, anew: 0 };
  await fc.assert(
    fc.asyncProperty(
      fc.array(entryOf, { maxLength: 3 }),
      fc.array(rowOf, { minLength: 1, maxLength: 5 }),
      fc.constantFrom(...Object.keys(changes)),
      fc.constantFrom(...bibs),
      async (before, rows, change, bib) => {
        const { table, dayId, ids } = await hall();
        table.clock.pass(30);
        const { store } = table.desk;
        store.write([], (db) => {
          for (const each of before) enter(db, dayId, ids[each.bib - 1] ?? 0, each);
        });
        const bytes = new TextEncoder().encode(sheetOf(rows));
        const sheet = await readSheet(table.desk, "results", bytes, choicesOf("results"));
        const planned = planSheet(store.db, sheet, at);
        store.write([], (db) => changes[change]?.(db, dayId, ids[bib - 1] ?? 0));
        if (planned.taking.holds(store.db)) {
          held.kept += 1;
          expect(told(planSheet(store.db, sheet, at))).toBe(told(planned));
          store.write([], (db) => planned.taking.write(db, at));
          const taken = dump(store.db);
          store.write([], (db) => rebuildMarks(db));
          expect(taken.get("mark")).toEqual(dump(store.db).get("mark"));
        } else held.anew += 1;
        table.desk.close();
      },
    ),
    { numRuns: 120 },
  );
  // Both happen, so that neither answer is the only one.
  expect(Math.min(held.kept, held.anew)).toBeGreaterThan(10);
});

test("an entry of somebody who is not in the sheet leaves its plan as it is; one of somebody who is does not", async () => {
  for (const [bib, holds] of [
    [4, true],
    [1, false],
  ] as const) {
    const { table, dayId, ids } = await hall();
    const { store } = table.desk;
    const sheet = await readSheet(
      table.desk,
      "results",
      new TextEncoder().encode("bib,test,time\n1,core,60\n"),
    );
    const { taking } = planSheet(store.db, sheet, at);
    store.write([], (db) => changes.clockwise?.(db, dayId, ids[bib - 1] ?? 0));
    expect(taking.holds(store.db)).toBe(holds);
    table.desk.close();
  }
});

/** Counts from now on how many statements write into each table. */
function writes({ desk }: TestDesk): Map<string, number> {
  const connection = connectionOf(desk.store.db);
  const prepare = connection.prepare.bind(connection);
  const counts = new Map<string, number>();
  Object.assign(connection, {
    prepare(sql: string) {
      const statement = prepare<unknown[], unknown>(sql);
      const run = statement.run.bind(statement);
      const table = /^(?:INSERT INTO|UPDATE) (\w+)/.exec(sql)?.[1] ?? "";
      return Object.assign(statement, {
        run(...values: unknown[]) {
          counts.set(table, (counts.get(table) ?? 0) + 1);
          return run(...values);
        },
      });
    },
  });
  return counts;
}

test("a sheet of results is written by a few statements, however many rows it has", async () => {
  const { table } = await hall();
  const counts = writes(table);
  await take(
    table,
    "results",
    sheetOf(bibs.slice(0, 3).flatMap((bib) => kinds.map((_, kind) => ({ bib, kind, time: "" })))),
  );
  const tables = ["attempt", "mark", "step_row"];
  expect(tables.map((name) => [name, counts.get(name) ?? 0])).toEqual(tables.map((name) => [name, 1]));
  expect(attemptsOfDay(table.desk.store.db, 1)).toHaveLength(9);
  table.desk.close();
});
