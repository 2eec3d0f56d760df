import { randomUUID } from "node:crypto";
import { beforeEach, expect, test } from "vitest";
import { planPast } from "../../electron/api/intake/plan-past.ts";
import { readPastRow } from "../../electron/sheets/past.ts";
import { connectionOf } from "../store/connection.ts";
import { refusalOf } from "./desk.ts";
import { past, type StationDay, stationDay } from "./station-day.ts";

let day: StationDay;
beforeEach(async () => {
  day = await stationDay();
  past(day, 1, "push-up", 520, "2026-03-14", "full");
});
const people = () => day.as("organiser").people;
const results = () => people().pastResults({ athleteId: day.idOf(1), lengths: "cm" });

/** A step about the one result that stands. */
async function step(instead: string | null, more: { sure?: boolean; id?: string } = {}) {
  const [mark] = (await results()).standing;
  if (mark === undefined) throw new Error("No result stands.");
  const { written: _, ...which } = mark;
  return { ...{ id: randomUUID(), reason: "A digit too many", by: "qa", instead }, ...which, ...more };
}
const withId = (given: Awaited<ReturnType<typeof step>>) => ({ ...given, athleteId: day.idOf(1) });

test("a 520 for 52 is corrected with a reason, and is the best no more; a retry changes nothing", async () => {
  const right = withId(await step("52", { sure: true }));
  expect(await people().voidPast(right)).toEqual({ outcome: "done" });
  expect(await people().voidPast(right)).toEqual({ outcome: "done" });
  const { standing, voided } = await results();
  expect(standing.map(({ value }) => value)).toEqual([52]);
  expect(voided).toMatchObject([
    { value: 520, by: "QA", reason: "A digit too many", at: day.clock.at.toISOString() },
  ]);
  const { history } = await day.station.find({ test: "push-up", bib: "1" });
  expect(history.find(({ variant }) => variant === "full")?.best?.value).toBe(52);
});

test("it is removed with a reason, and only what stands can be", async () => {
  const gone = withId(await step(null));
  await people().voidPast(gone);
  expect((await results()).standing).toEqual([]);
  const again = people().voidPast({ ...gone, id: randomUUID() });
  expect((await refusalOf(again)).key).toBe("pastResult.gone");
  const held = await people().held({ athleteId: day.idOf(1) });
  expect(held.past_removed).toMatchObject([{ value: 520, instead: null, voided_by: "QA" }]);
});

test("what can't be read changes nothing, and neither does a reason that is empty", async () => {
  await refusalOf(people().voidPast(withId(await step("fifty-two"))));
  const silent = people().voidPast({ ...withId(await step("52")), reason: " " });
  expect((await refusalOf(silent)).key).toBe("station.reason");
  expect((await refusalOf(people().voidPast(withId(await step("520", { sure: true }))))).key).toBeDefined();
  expect((await results()).standing.map(({ value }) => value)).toEqual([520]);
});

test("a result of a date on which this hall held a day itself is asked about when it is imported", () => {
  const { db } = day.desk.store;
  function unusualOf(date: string) {
    const cells: Record<string, string> = {
      league: "Foundry Town",
      number: "02",
      date,
      test: "core",
      mark: "90",
    };
    const row = readPastRow((column) => cells[column] ?? "", { today: "2026-11-14", order: "day" });
    const {
      outcomes: [planned],
    } = planPast(db, [{ line: 2, row }], { answers: {} });
    return planned !== undefined && "unusual" in planned ? planned.unusual : undefined;
  }
  expect(unusualOf("2026-11-14")).toMatchObject({ key: "pastResult.ownDay" });
  expect(unusualOf("2026-11-13")).toBeNull();
});

test("the store lets no result go without its line, and an erasure takes both", async () => {
  const db = connectionOf(day.desk.store.db);
  expect(() => db.exec("DELETE FROM past_mark")).toThrow(/append-only/);
  expect(() => db.exec("UPDATE past_mark SET value = 1")).toThrow(/append-only/);
  await people().voidPast(withId(await step(null)));
  expect(() => db.exec("DELETE FROM past_void")).toThrow(/on record/);
  past(day, 1, "push-up", 21, "2026-05-01", "full");
  await people().erase({ erasureId: randomUUID(), athleteId: day.idOf(1), typed: "01", by: "QA" });
  for (const table of ["past_mark", "past_void"]) {
    expect(db.prepare(`SELECT * FROM ${table}`).all()).toEqual([]);
  }
});
