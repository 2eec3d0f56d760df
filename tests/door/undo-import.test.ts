import { randomUUID } from "node:crypto";
import { beforeEach, describe, expect, test } from "vitest";
import { allAthletes } from "../../electron/store/tables/athletes.ts";
import { dump } from "../store/hall.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { bring, checkIn, holdDay, take } from "./sheets.ts";

let table: TestDesk;
let dayId: number;
beforeEach(() => {
  table = testDesk();
  dayId = holdDay(table, { open: true });
});

const roster = "league,name,number\nLantern Bay,Ada Rill,7\nLantern Bay,Cy Loom,12\nMill City,Bo Crank,5\n";
const past =
  "league,number,date,test,mark\nLantern Bay,7,2026-03-14,core,520\nLantern Bay,12,2026-03-14,core,60\n";
const results = "bib,test,time\n1,core,60\n2,core,70\n";

const people = () => table.as("organiser").people;
const imports = () => people().steps({ of: "imports" });
const undo = async (place = 0) => people().undo({ stepId: String((await imports())[place]?.id), by: "qa" });
const facts = () =>
  new Map([...dump(table.desk.store.db)].filter(([name]) => !/^step|athlete_highest|sheet_form/.test(name)));
const idOf = (name: string) => allAthletes(table.desk.store.db).find((each) => each.name === name)?.id ?? 0;

describe("an import of a roster", () => {
  test("stands in the history with its file and its counts, and names nobody", async () => {
    const uploadId = await bring(table, roster);
    await table.as("organiser").intake.take({ uploadId, kind: "roster", fileName: "autumn  list.csv" });
    const [line, ...more] = await imports();
    expect(more).toEqual([]);
    expect(line).toMatchObject({
      kind: "roster",
      file: "autumn list.csv",
      counts: { new: 3 },
      blocked: null,
    });
    expect(JSON.stringify(line)).not.toContain("Ada");
    // The same again is no import.
    await take(table, "roster", roster);
    expect(await imports()).toHaveLength(1);
  });

  test("is undone as a whole: all is as before, and it can come again", async () => {
    const before = facts();
    await take(table, "roster", roster);
    await undo();
    expect(facts()).toEqual(before);
    expect(await imports()).toMatchObject([{ undone: { by: "QA" } }]);
    expect((await take(table, "roster", roster)).counts).toMatchObject({ new: 3 });
  });

  test("gives those who were known their values of before", async () => {
    await take(table, "roster", roster);
    const before = facts();
    await take(
      table,
      "roster",
      "league,name,number,birth year\nLantern Bay,Ada Rill,7,1999\nMill City,Uma Fox,8,\n",
    );
    await undo();
    expect(facts()).toEqual(before);
  });

  test.each([
    ["a check-in", "steps.checkedIn", () => checkIn(table, dayId, idOf("Ada Rill"), 1)],
    ["an imported result", "steps.later", () => take(table, "past", past)],
    ["a correction", "steps.later", renamed],
    [
      "an erasure",
      "steps.erased",
      () => people().erase({ erasureId: randomUUID(), athleteId: idOf("Ada Rill"), typed: "7", by: "qa" }),
    ],
  ])("stays once something was built on it: %s", async (_what, key, build) => {
    await take(table, "roster", roster);
    await build();
    const own = (await imports()).findIndex(({ kind }) => kind === "roster");
    expect((await imports())[own]?.blocked?.key).toBe(key);
    const before = facts();
    expect((await refusalOf(undo(own))).key).toBe(key);
    expect(facts()).toEqual(before);
  });

  async function renamed() {
    const { athleteId, number, league } = await people().get({ athleteId: idOf("Ada Rill") });
    const rest = { birthYear: null, category: null, name: "Ada Quill" };
    await people().mend({ athleteId, number, league, ...rest });
  }
});

test("past results are undone as a whole, as long as none was corrected; the roster before them then too", async () => {
  const before = facts();
  await take(table, "roster", roster);
  const between = facts();
  await take(table, "past", past);
  await undo();
  expect(facts()).toEqual(between);
  await take(table, "past", past);
  const [mark] = (await people().pastResults({ athleteId: idOf("Ada Rill") })).standing;
  if (mark === undefined) throw new Error("No result stands.");
  const { written: _, ...which } = mark;
  const removing = { id: randomUUID(), athleteId: idOf("Ada Rill"), instead: null, reason: "Slip", by: "qa" };
  await people().voidPast({ ...which, ...removing });
  expect((await imports())[0]?.blocked?.key).toBe("steps.pastChanged");
  expect(before).not.toEqual(between);
});

describe("an import of results", () => {
  beforeEach(async () => {
    await take(table, "roster", roster);
    checkIn(table, dayId, idOf("Ada Rill"), 1);
    checkIn(table, dayId, idOf("Cy Loom"), 2);
    await take(table, "results", results);
  });
  const marks = async () => (await people().get({ athleteId: idOf("Ada Rill") })).marks.length;

  test("is cancelled as a whole, stays to be seen, and may come again", async () => {
    expect(await marks()).toBe(1);
    await undo();
    expect(await marks()).toBe(0);
    const { attempts } = await people().get({ athleteId: idOf("Ada Rill") });
    expect(attempts).toMatchObject([{ void: { by: "QA", reason: "Import undone" } }]);
    expect((await take(table, "results", results)).counts).toMatchObject({ new: 2, known: 0 });
    expect(await marks()).toBe(1);
    expect((await take(table, "results", results)).counts).toMatchObject({ new: 0, known: 2 });
  });

  test("stays once one of them was corrected, or the day is closed", async () => {
    await table.as("organiser").day.close({ dayId });
    expect((await imports())[0]?.blocked?.key).toBe("steps.dayClosed");
  });
});

test("an erasure takes the name of a league that had nobody else from the history of imports too", async () => {
  await take(table, "roster", "league,name,number\nQuarzheim,Ada Rill,7\nMill City,Bo Crank,5\n");
  await people().erase({ erasureId: randomUUID(), athleteId: idOf("Ada Rill"), typed: "7", by: "qa" });
  const left = JSON.stringify([...dump(table.desk.store.db)]);
  expect(left).not.toMatch(/Quarzheim/i);
  expect(left).toContain("Mill City");
});

test.each(["check-in", "station", "board"] as const)("%s may neither see nor undo", async (who) => {
  expect((await refusalOf(table.as(who).people.steps({ of: "imports" }))).key).toBe("door.forbidden");
  expect((await refusalOf(table.as(who).people.undo({ stepId: randomUUID(), by: "qa" }))).key).toBe(
    "door.forbidden",
  );
});
