import { expect, test } from "vitest";
import { calls } from "../../electron/store/tables/calls.ts";
import { refusalOf, type TestDesk } from "./desk.ts";
import { bringTo, entry, past, reps, type StationDay, setState, stationDay, trial } from "./station-day.ts";

async function bibs(day: StationDay, test: "push-up" | "agility" | "vertical"): Promise<(number | null)[]> {
  return (await day.station.view({ test })).queue.map(({ who }) => who.bib);
}

test("whoever checked in first waits longest; called ones stand on top", async () => {
  const day = await stationDay();
  expect(await bibs(day, "push-up")).toEqual([1, 2, 3, 4, 5, 6]);
  await day.station.callAthlete({ athleteId: day.idOf(4), test: "push-up" });
  day.clock.pass(1);
  await day.station.callAthlete({ athleteId: day.idOf(2), test: "push-up" });
  expect(await bibs(day, "push-up")).toEqual([4, 2, 1, 3, 5, 6]);
  await day.station.uncall({ athleteId: day.idOf(4), test: "push-up" });
  expect(await bibs(day, "push-up")).toEqual([2, 1, 3, 4, 5, 6]);
});

test("an entry ends the call and sends the athlete to the next queue, to rest", async () => {
  const day = await stationDay();
  await day.station.callAthlete({ athleteId: day.idOf(3), test: "push-up" });
  await day.station.enter(entry(day.idOf(3), "push-up", reps(20)));
  expect(calls(day.desk.store.db, day.dayId)).toEqual([]);
  expect(await bibs(day, "push-up")).toEqual([1, 2, 4, 5, 6]);
  const { queue, counts } = await day.station.view({ test: "agility" });
  // 09:06 by the test's clock, and five minutes of rest.
  expect(queue).toMatchObject([
    {
      who: { bib: 3, name: "Cy Loop" },
      waitingSince: "2026-11-14T09:06:00.000Z",
      readyAt: "2026-11-14T09:11:00.000Z",
      calledAt: null,
      begun: null,
    },
  ]);
  expect(counts).toEqual({ done: 0, waiting: 1, later: 5, leftOut: 0 });
});

test("a correction an hour later does not make the athlete rest again, and leaves calls alone", async () => {
  const day = await stationDay();
  const first = entry(day.idOf(1), "push-up", reps(20));
  await day.station.enter(first);
  day.clock.pass(60);
  await day.station.callAthlete({ athleteId: day.idOf(1), test: "agility" });
  const replaces = { attemptId: first.attempts[0]?.id ?? "", reason: "Counted wrongly" };
  await day.station.enter(entry(day.idOf(1), "push-up", reps(21), { replaces }));
  expect((await day.station.view({ test: "agility" })).queue).toMatchObject([
    { readyAt: "2026-11-14T09:11:00.000Z", calledAt: "2026-11-14T10:06:00.000Z" },
  ]);
});

test("correcting one direction leaves the call to the other alone", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "agility");
  const first = entry(day.idOf(1), "agility", trial("cw", 7, 3));
  await day.station.enter(first);
  await day.station.callAthlete({ athleteId: day.idOf(1), test: "agility" });
  const replaces = { attemptId: first.attempts[0]?.id ?? "", reason: "Slip" };
  await day.station.enter(entry(day.idOf(1), "agility", trial("cw", 7, 2), { replaces }));
  expect(calls(day.desk.store.db, day.dayId)).toMatchObject([{ athleteId: day.idOf(1), test: "agility" }]);
});

test("calling the next one takes the first who is rested; when all rest it says who is ready first", async () => {
  const day = await stationDay();
  expect(await day.station.callNext({ test: "push-up" })).toEqual({ athleteId: day.idOf(1) });
  expect(await day.station.callNext({ test: "push-up" })).toEqual({ athleteId: day.idOf(2) });
  expect((await refusalOf(day.station.callNext({ test: "agility" }))).key).toBe("station.nobodyWaits");
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  day.clock.pass(2);
  expect(await refusalOf(day.station.callNext({ test: "agility" }))).toEqual({
    key: "station.allRest",
    values: { bib: 1, count: 3 },
  });
  day.clock.pass(3);
  expect(await day.station.callNext({ test: "agility" })).toEqual({ athleteId: day.idOf(1) });
});

test("nobody is called to a test that is done or not their turn; calling twice changes nothing", async () => {
  const day = await stationDay();
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  const done = day.station.callAthlete({ athleteId: day.idOf(1), test: "push-up" });
  expect((await refusalOf(done)).key).toBe("station.done");
  const early = day.station.callAthlete({ athleteId: day.idOf(1), test: "core" });
  expect((await refusalOf(early)).key).toBe("test.agility.first");
  await day.station.callAthlete({ athleteId: day.idOf(2), test: "push-up" });
  day.clock.pass(5);
  await day.station.callAthlete({ athleteId: day.idOf(2), test: "push-up" });
  const { queue } = await day.station.view({ test: "push-up" });
  expect(queue[0]).toMatchObject({ who: { bib: 2 }, calledAt: "2026-11-14T09:06:00.000Z" });
});

test("a skip with a reason lets the athlete on, and can be taken back", async () => {
  const day = await stationDay();
  const which = { athleteId: day.idOf(1), test: "push-up" as const };
  await day.station.callAthlete(which);
  expect((await refusalOf(day.organiser.skip({ ...which, reason: " ", by: "OR" }))).key).toBe(
    "station.reason",
  );
  await day.organiser.skip({ ...which, reason: "Sore wrist", by: "or" });
  expect(calls(day.desk.store.db, day.dayId)).toEqual([]);
  expect(await bibs(day, "push-up")).toEqual([2, 3, 4, 5, 6]);
  expect(await bibs(day, "agility")).toEqual([1]);
  const view = await day.station.view({ test: "push-up" });
  expect(view.counts).toEqual({ done: 0, waiting: 5, later: 0, leftOut: 1 });
  expect(view.skipped).toEqual([]);
  expect((await day.organiser.view({ test: "push-up" })).skipped).toMatchObject([
    { who: { bib: 1 }, reason: "Sore wrist", by: "OR" },
  ]);
  const refused = await refusalOf(day.station.enter(entry(which.athleteId, "push-up", reps(20))));
  expect(refused).toEqual({
    key: "station.leftOut.skip",
    values: { name: "Ada Rill" },
  });
  await day.organiser.unskip(which);
  expect(await bibs(day, "push-up")).toEqual([1, 2, 3, 4, 5, 6]);
});

test("a test that is done can't be skipped", async () => {
  const day = await stationDay();
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  const late = day.organiser.skip({ athleteId: day.idOf(1), test: "push-up", reason: "Late", by: "OR" });
  expect((await refusalOf(late)).key).toBe("station.done");
});

test("half a quadrant jump stays in its queue, with what is still to come", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "agility");
  const seen = { direction: "cw", laps: 7, extra: 3, touches: 0 };
  await day.station.enter(entry(day.idOf(1), "agility", seen));
  const { queue } = await day.station.view({ test: "agility" });
  expect(queue).toMatchObject([{ who: { bib: 1 }, begun: { key: "test.agility.missing.ccw" } }]);
});

test("whoever withdraws leaves the queue; what was measured stays in the list", async () => {
  const day = await stationDay();
  await day.station.enter(entry(day.idOf(1), "push-up", reps(20)));
  setState(day, day.dayId, day.idOf(1), "withdrawn", 1);
  expect(await bibs(day, "agility")).toEqual([]);
  const { recent, counts } = await day.station.view({ test: "push-up" });
  expect(recent).toMatchObject([{ attempt: { who: { bib: 1 } }, written: { number: "20" } }]);
  expect(counts.done).toBe(1);
});

test("the newest fifteen attempts stand on top, newest first; a void one has no mark", async () => {
  const day = await stationDay();
  let last = "";
  for (let value = 1; value <= 18; value += 1) {
    const next = entry(day.idOf(1), "push-up", reps(value), { sure: true });
    if (last !== "") next.replaces = { attemptId: last, reason: "Counted wrongly" };
    await day.station.enter(next);
    last = next.attempts[0]?.id ?? "";
  }
  const { recent } = await day.station.view({ test: "push-up" });
  expect(recent).toHaveLength(15);
  expect(recent[0]).toMatchObject({ attempt: { seen: { reps: 18 }, void: null }, written: { number: "18" } });
  expect(recent[1]).toMatchObject({
    attempt: { seen: { reps: 17 }, void: { reason: "Counted wrongly", by: "QA" } },
    written: null,
  });
});

test("who may do what", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 20, "2026-08-01", "full");
  const which = { athleteId: day.idOf(1), test: "push-up" as const };
  const procedures = {
    view: (who) => who.view({ test: "push-up" }),
    find: (who) => who.find({ test: "push-up", bib: "1" }),
    enter: (who) => who.enter(entry(999, "push-up", reps(20))),
    void: (who) => who.void({ attemptId: "none", reason: "Slip", by: "QA" }),
    history: (who) => who.history(which),
    callAthlete: (who) => who.callAthlete({ ...which, athleteId: 999 }),
    uncall: (who) => who.uncall(which),
    callNext: (who) => who.callNext({ test: "endurance" }),
    skip: (who) => who.skip({ ...which, athleteId: 999, reason: "Sore", by: "QA" }),
    unskip: (who) => who.unskip(which),
  } satisfies Record<string, (who: ReturnType<TestDesk["as"]>["station"]) => Promise<unknown>>;
  const allowed = new Map<string, string[]>();
  for (const role of ["organiser", "station", "check-in", "board"] as const) {
    const mine = [];
    for (const [name, call] of Object.entries(procedures)) {
      const outcome = await call(day.as(role).station).catch((error: { code: string }) => error);
      const forbidden = typeof outcome === "object" && outcome !== null && "code" in outcome;
      if (!forbidden || outcome.code !== "FORBIDDEN") mine.push(name);
    }
    allowed.set(role, mine);
  }
  const every = Object.keys(procedures);
  expect(Object.fromEntries(allowed)).toEqual({
    organiser: every,
    station: every.filter((name) => name !== "skip" && name !== "unskip"),
    "check-in": [],
    board: [],
  });
});
