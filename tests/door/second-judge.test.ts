import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { dump } from "../store/hall.ts";
import { refusalOf } from "./desk.ts";
import { bringTo, entry, jump, reps, type StationDay, setState, stationDay, trial } from "./station-day.ts";
import { planOf } from "./study-hall.ts";

let day: StationDay;
beforeEach(async () => {
  day = await stationDay();
});
afterEach(() => {
  expect(day.faults).toEqual([]);
  day.desk.close();
});

const organiser = () => day.as("organiser").study;

/** The procedures of studies as the second judge's device of a test may call them. */
function judgeOf(test: TestCode) {
  return day.from({ id: randomUUID(), name: "Blue phone", place: { role: "second-judge", test } }).study;
}

/** A planned study of a test: what QA enters at the station, and what RS sees. */
async function planned(test: TestCode = "push-up"): Promise<string> {
  const variant = test === "push-up" ? "full" : "";
  return (await organiser().plan(planOf(day, { test, variant }))).id;
}

function reading(studyId: string, bib: number, seen: readonly unknown[], more: object = {}) {
  return {
    ...{ id: randomUUID(), studyId, position: 2, athleteId: day.idOf(bib), seen: [...seen], by: "RS" },
    ...more,
  };
}

const valuesOf = async (studyId: string) =>
  (await organiser().get({ studyId })).rows.map(({ bib, values }) => [
    bib,
    ...values.map((value) => value?.number ?? null),
  ]);

test("a reading goes into the study and into nobody's marks, and a retry never doubles", async () => {
  const studyId = await planned();
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20), { sure: true }));
  const apart = () =>
    JSON.stringify([...dump(day.desk.store.db)].filter(([table]) => !table.startsWith("study")));
  const before = apart();
  const read = reading(studyId, 1, [reps(23)]);
  const judge = judgeOf("push-up");
  expect(await judge.read(read)).toEqual({ outcome: "saved", told: null });
  expect(await judge.read(read)).toEqual({ outcome: "saved", told: null });
  expect(await valuesOf(studyId)).toEqual([[1, "20", "23"]]);
  expect(apart()).toBe(before);
  // Another id for the same athlete is a second reading, and what it is told of is the judge's own.
  expect(await refusalOf(judge.read(reading(studyId, 1, [reps(24)])))).toEqual({
    key: "study.twice",
    values: { name: "Ada Rill", held: "23" },
  });
  expect(await refusalOf(judge.read({ ...read, seen: [reps(24)] }))).toEqual({ key: "study.otherReading" });
});

test("who is called or in a lane is shown with bib and name, and never what the station entered", async () => {
  const studyId = await planned();
  const judge = judgeOf("push-up");
  await day.station.callAthlete({ athleteId: day.idOf(2), test: "push-up" });
  const heat = { test: "push-up", heatId: randomUUID(), lanes: 1, by: "QA" } as const;
  await day.as("station").heat.gather(heat);
  await day.station.enter(entry(day.idOf(3), "push-up", reps(47), { sure: true }));
  const shown = await judge.toRead();
  expect(shown.study).toEqual({ studyId, variant: "full", series: [{ position: 2, judge: "RS", read: 0 }] });
  expect(shown.people.map(({ who }) => who.bib)).toEqual([2]);
  expect(Object.keys(shown.people[0]?.who ?? {}).sort()).toEqual([
    ...["athleteId", "bib", "league", "name", "number"],
  ]);
  const found = await judge.find({ bib: "3" });
  expect(found).toMatchObject({ bib: 3, name: "Cy Loop" });
  // Four times the typical error apart: the organiser is asked about it, and the second judge is told nothing.
  const apart = reading(studyId, 3, [reps(12)]);
  const answers = [shown, found, await judge.read(apart), await judge.toRead()];
  expect(JSON.stringify(answers).replaceAll(/[0-9a-f-]{36}/g, "")).not.toContain("47");
});

test("whoever was read is shown so, and may be read before the station has a result", async () => {
  const studyId = await planned();
  await day.station.callAthlete({ athleteId: day.idOf(1), test: "push-up" });
  const judge = judgeOf("push-up");
  await judge.read(reading(studyId, 1, [reps(18)]));
  expect((await judge.toRead()).people).toEqual([{ who: expect.objectContaining({ bib: 1 }), read: [2] }]);
  expect(await valuesOf(studyId)).toEqual([[1, null, "18"]]);
  await day.station.enter(entry(day.idOf(1), "push-up", reps(17), { sure: true }));
  expect(await valuesOf(studyId)).toEqual([[1, "17", "18"]]);
});

test("an unusual reading is asked about once, and a yes saves it", async () => {
  const studyId = await planned();
  const judge = judgeOf("push-up");
  const odd = reading(studyId, 1, [reps(0)]);
  expect(await judge.read(odd)).toMatchObject({ outcome: "ask", questions: [expect.anything()] });
  expect(await valuesOf(studyId)).toEqual([]);
  expect(await judge.read({ ...odd, sure: true })).toMatchObject({ outcome: "saved" });
  expect(await valuesOf(studyId)).toEqual([[1, null, "0"]]);
});

test("a result is whole: both directions of a jump, all leaps that the day wants", async () => {
  const jumps = await planned("agility");
  await bringTo(day, 1, "agility");
  const both = [trial("cw", 7, 3), trial("ccw", 7, 1)];
  const judge = judgeOf("agility");
  expect(await refusalOf(judge.read(reading(jumps, 1, both.slice(0, 1))))).toEqual({ key: "study.notWhole" });
  await judge.read(reading(jumps, 1, both));
  const leaps = await planned("vertical");
  await bringTo(day, 2, "vertical");
  const watched = judgeOf("vertical");
  const leap = jump(2100, 2500);
  expect(await refusalOf(watched.read(reading(leaps, 2, [leap])))).toEqual({ key: "study.notWhole" });
  await watched.read(reading(leaps, 2, [leap, leap, jump(2100, 2520)]));
  // The station's own result by the same attempts: a reading is scored as a result is.
  await day.station.enter(
    entry(day.idOf(1), "agility", null, {
      sure: true,
      attempts: both.map((seen) => ({ id: randomUUID(), seen })),
    }),
  );
  const [[, station, second] = []] = await valuesOf(jumps);
  expect(second).toBe(station);
});

test("another test's study, another day's, somebody who does not test and rubbish are refused with why", async () => {
  const studyId = await planned();
  const keyOf = async (call: Promise<unknown>) => (await refusalOf(call)).key;
  expect(await keyOf(judgeOf("core").read(reading(studyId, 1, [reps(20)])))).toBe("door.otherStation");
  const judge = judgeOf("push-up");
  expect(await keyOf(judge.read(reading(studyId, 1, [reps(20)], { position: 1 })))).toBe("study.ofMarks");
  expect(await keyOf(judge.read(reading(randomUUID(), 1, [reps(20)])))).toBe("study.unknown");
  expect(await keyOf(judge.read(reading(studyId, 1, [{ how: "hearsay" }])))).toBe("marks.unreadableField");
  setState(day, day.dayId, day.idOf(4), "withdrawn", 4);
  expect(await keyOf(judge.read(reading(studyId, 4, [reps(20)])))).toBe("station.state.withdrawn");
  expect(await keyOf(judge.find({ bib: "4" }))).toBe("station.state.withdrawn");
  expect(await keyOf(judge.read(reading(studyId, 1, [reps(20)], { athleteId: 999 })))).toBe(
    "station.notListed",
  );
  await day.as("organiser").day.close({ dayId: day.dayId });
  expect((await judge.toRead()).study).toBeNull();
  await day.as("organiser").day.create({ date: "2026-11-21", title: "A week later", sure: true });
  await day.as("organiser").day.open({ sure: true });
  expect(await keyOf(judge.read(reading(studyId, 1, [reps(20)])))).toBe("study.otherDay");
});

test("the place is offered for the tests with a study of the open day that wants readings", async () => {
  expect(await organiser().secondJudges()).toEqual([]);
  const studyId = await planned("core");
  expect(await organiser().secondJudges()).toEqual(["core"]);
  expect((await organiser().get({ studyId })).atDevices).toBe(true);
  const visits = [
    { from: "visit" as const, date: "2026-11-14" },
    { from: "visit" as const, date: "2026-11-20" },
  ];
  await organiser().plan(planOf(day, { kind: "visits", series: visits }));
  expect(await organiser().secondJudges()).toEqual(["core"]);
  expect((await judgeOf("push-up").toRead()).study).toBeNull();
  await day.as("organiser").day.close({ dayId: day.dayId });
  expect(await organiser().secondJudges()).toEqual([]);
  expect((await organiser().get({ studyId })).atDevices).toBe(false);
});
