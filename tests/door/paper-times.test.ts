import { randomUUID } from "node:crypto";
import { beforeEach, describe, expect, test } from "vitest";
import { clockOf } from "../../electron/api/door/calendar.ts";
import { turnTimes } from "../../electron/domain/summary/turns.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { marksOfDay } from "../../electron/store/tables/marks.ts";
import { refusalOf } from "./desk.ts";
import { take } from "./sheets.ts";
import { type StationDay, stationDay } from "./station-day.ts";

let day: StationDay;
beforeEach(async () => {
  day = await stationDay();
  day.clock.pass(60);
});

const minutesAgo = (minutes: number) => new Date(day.clock.at.getTime() - minutes * 60_000);
const clockAgo = (minutes: number) => clockOf(minutesAgo(minutes).toISOString());

/** Who waits for the quadrant jump: bib, since when they wait and from when on they are rested, in minutes ago. */
async function waiting(): Promise<[number | null, number, number][]> {
  const { queue } = await day.organiser.view({ test: "agility", lengths: "cm" });
  const ago = (at: string) => Math.round((day.clock.at.getTime() - Date.parse(at)) / 60_000);
  return queue.map(({ who, waitingSince, readyAt }) => [who.bib, ago(waitingSince), ago(readyAt)]);
}

function pushUps(bib: number, paper?: { at: string | null }) {
  return day.organiser.enter({
    ...{ athleteId: day.idOf(bib), test: "push-up", variant: "full", by: "QA", note: "", sure: true },
    attempts: [{ id: randomUUID(), seen: { how: "tally", reps: 20, offAtEnd: 0 } }],
    ...{ lengths: "cm", ...(paper && { paper }) },
  });
}

const sheet = (rows: string) => take(day, "results", `bib,test,variant,reps,missed at end,done at\n${rows}`);
const madeOf = (bib: number) =>
  marksOfDay(day.desk.store.db, day.dayId).find(({ athleteId }) => athleteId === day.idOf(bib))?.made;

describe("paper without a time", () => {
  test("makes nobody rest, from a sheet or typed at the station, and waits since it was entered as before", async () => {
    await sheet("1,push-up,full,20,0,\n");
    await pushUps(2, { at: null });
    await pushUps(3);
    day.clock.pass(1);
    expect(await waiting()).toEqual([
      [1, 1, 67],
      [2, 1, 66],
      [3, 1, -4],
    ]);
  });

  test("says nothing of the rest that a result was made after, also once it was corrected", async () => {
    await pushUps(1, { at: null });
    await pushUps(2);
    const first = attemptsOfDay(day.desk.store.db, day.dayId).find(
      ({ athleteId }) => athleteId === day.idOf(1),
    );
    day.clock.pass(10);
    await day.organiser.enter({
      ...{ athleteId: day.idOf(1), test: "push-up", variant: "full", by: "QA", note: "", sure: true },
      attempts: [{ id: randomUUID(), seen: { how: "tally", reps: 21, offAtEnd: 0 } }],
      replaces: { attemptId: first?.id ?? "", reason: "Misread" },
      lengths: "cm",
    });
    expect([madeOf(1), madeOf(2)]).toEqual([
      { position: null, restMinutes: null },
      { position: 1, restMinutes: null },
    ]);
    expect((await waiting()).map(([bib, , ready]) => [bib, ready])).toEqual([
      [1, 76],
      [2, 5],
    ]);
  });

  test("is in no station's time", async () => {
    await pushUps(1);
    day.clock.pass(3);
    await pushUps(2);
    day.clock.pass(1);
    for (const bib of [3, 4, 5]) await pushUps(bib, { at: null });
    const attempts = attemptsOfDay(day.desk.store.db, day.dayId);
    const turns = turnTimes({
      ...{ state: "open", people: [], marks: [], leftOut: [], laneTimes: [] },
      attempts,
    });
    expect(turns.map(({ ms }) => ms)).toEqual([null, 180_000]);
  });
});

describe("paper with a time", () => {
  test("counts from that time, from a sheet or typed at the station", async () => {
    await sheet(`1,push-up,full,20,0,${clockAgo(30)}\n`);
    await pushUps(2, { at: clockAgo(3) });
    expect(await waiting()).toEqual([
      [1, 30, 25],
      [2, 3, -2],
    ]);
    expect(madeOf(1)).toEqual({ position: 1, restMinutes: null });
  });

  test("of which nothing can have been done is refused with what to do", async () => {
    expect((await refusalOf(pushUps(1, { at: clockAgo(-5) }))).key).toBe("station.notSince");
    const { keptBack } = await sheet(
      `1,push-up,full,20,0,${clockAgo(-5)}\n2,push-up,full,20,0,half past\n3,push-up,full,20,0,\n`,
    );
    expect(keptBack.map(({ line, reason: { key } }) => [line, key])).toEqual([
      [2, "sheets.row.notSince"],
      [3, "sheets.row.doneAt"],
    ]);
  });

  test("comes to the same attempt when the sheet is imported again with times", async () => {
    await sheet("1,push-up,full,20,0,\n");
    const again = await sheet(`1,push-up,full,20,0,${clockAgo(5)}\n`);
    expect(again.counts).toMatchObject({ new: 0, known: 1 });
    expect(attemptsOfDay(day.desk.store.db, day.dayId)).toHaveLength(1);
  });
});
