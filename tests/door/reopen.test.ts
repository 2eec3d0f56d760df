import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { refusalOf } from "./desk.ts";
import { by, hallAt, sent, startedHeat } from "./heat-hall.ts";
import { addPeople, answersOf } from "./people-of-a-day.ts";
import { entry, reps, stationDay } from "./station-day.ts";

/** A day that was held and closed, half a year ago by the desk's clock. */
async function closedDay() {
  const day = await stationDay();
  await day.as("organiser").day.close({ dayId: day.dayId });
  day.clock.pass(60 * 24 * 180);
  return { day, organiser: day.as("organiser").day };
}
const late = (dayId: number, more: Partial<{ pin: string; id: string }> = {}) => ({
  ...{ dayId, id: randomUUID(), by: "qa", reason: "Two papers lay under the table", ...more },
});

test("a closed day is opened again for late papers, with who, when and why in its history; a retry adds no line", async () => {
  const { day, organiser } = await closedDay();
  const again = late(day.dayId);
  expect(await organiser.reopen(again)).toEqual({ outcome: "right" });
  expect(await organiser.reopen(again)).toEqual({ outcome: "right" });
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  const history = await organiser.history({ dayId: day.dayId });
  expect(history.map(({ kind }) => kind)).toEqual(["opened", "closed", "reopened"]);
  expect(history[2]).toMatchObject({
    ...{ by: "QA", reason: "Two papers lay under the table", at: day.clock.at.toISOString() },
  });
  await organiser.close({ dayId: day.dayId });
  expect(await organiser.reopen(again)).toEqual({ outcome: "right" });
  expect((await organiser.current()).day).toBeNull();
});

test("ages in a day that is opened again are those of the day on which people stood there", async () => {
  const { day, organiser } = await closedDay();
  await organiser.reopen(late(day.dayId));
  expect((await organiser.current()).day?.heldOn).toBe("2026-11-14");
  // 18 in 2026, so perhaps not of age on the day; of age for sure by the time of the papers.
  const [kid = 0] = addPeople(day, [{ league: "Quay", name: "Late Paper", birthYear: 2008 }], day.dayId);
  const admit = day.as("check-in").checkIn.admit(answersOf(kid));
  expect((await refusalOf(admit)).key).toBe("checkIn.guardian");
});

test("where there is a PIN it is asked for again", async () => {
  const { day, organiser } = await closedDay();
  await day.as("organiser").lock.setPin({ pin: "271828" });
  expect(await organiser.reopen(late(day.dayId))).toMatchObject({ outcome: "wrong" });
  expect(await organiser.reopen(late(day.dayId, { pin: "314159" }))).toMatchObject({ outcome: "wrong" });
  expect((await organiser.current()).day).toBeNull();
  expect(await organiser.reopen(late(day.dayId, { pin: "271828" }))).toEqual({ outcome: "right" });
  expect((await organiser.current()).day?.id).toBe(day.dayId);
});

test("not without a reason, and not while another day is planned or open", async () => {
  const { day, organiser } = await closedDay();
  expect((await refusalOf(organiser.reopen({ ...late(day.dayId), reason: " " }))).key).toBe("station.reason");
  expect((await refusalOf(organiser.reopen(late(99)))).key).toBe("day.none");
  await organiser.create({ date: "2027-05-13", title: "Spring" });
  expect(await refusalOf(organiser.reopen(late(day.dayId)))).toEqual({
    ...{ key: "dayPlan.otherAtHand", values: { title: "Spring" } },
  });
});

test("closing says first who is expected, who waits where, and which heat still stands", async () => {
  const day = await stationDay();
  addPeople(day, [{ league: "Quay", name: "Not Here" }], day.dayId);
  const { expected, waiting, heats } = await day.as("organiser").day.beforeClosing();
  expect(expected).toEqual({ count: 1, names: ["Not Here"] });
  expect(waiting.map(({ test: which }) => which)).toEqual(["push-up"]);
  expect(waiting[0]?.names).toContain("Ada Rill");
  expect(heats).toEqual([]);
});

test("closing names a heat in which somebody is still going, and none that is done though nobody has ended it", async () => {
  const hall = await hallAt("core");
  const heats = async () => (await hall.as("organiser").day.beforeClosing()).heats;
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(30_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 29_000)] });
  expect(await heats()).toEqual(["core"]);
  await hall.heat.tap({ heatId, by, events: [sent(2, "stop", 29_500)] });
  expect(await heats()).toEqual([]);
});
