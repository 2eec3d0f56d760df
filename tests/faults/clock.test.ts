import { expect, test } from "vitest";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { marksOfDay, rebuildMarks } from "../../electron/store/tables/marks.ts";
import { bringTo, entry, hold, past, reps, stationDay, ticket } from "../door/station-day.ts";

/** The same entries in the same order, with wall clocks set by `jump` before each. */
async function held(jump: (step: number) => Date | null) {
  const day = await stationDay();
  past(day, 1, "push-up", 20, "2026-05-02", "full");
  let step = 0;
  async function at<Result>(work: () => Promise<Result>): Promise<Result> {
    const to = jump(step);
    step += 1;
    if (to !== null) day.clock.at = to;
    return work();
  }
  const first = ticket(reps(18));
  await at(() =>
    day.station.enter({ ...entry(day.idOf(1), "push-up", null), attempts: [first], sure: true }),
  );
  const replaces = { attemptId: first.id, reason: "A slip" };
  await at(() => day.station.enter(entry(day.idOf(1), "push-up", reps(24), { sure: true, replaces })));
  await at(() => bringTo(day, 2, "core"));
  await at(() => day.station.enter(entry(day.idOf(2), "core", hold(95), { sure: true })));
  const { db } = day.desk.store;
  const order = attemptsOfDay(db, day.dayId).map(({ athleteId, test: of, seen }) => ({
    athleteId,
    of,
    seen,
  }));
  const marks = marksOfDay(db, day.dayId);
  day.desk.store.write(["attempts"], (store) => rebuildMarks(store));
  expect(marksOfDay(db, day.dayId)).toEqual(marks);
  day.desk.close();
  return { order, marks };
}

test("a wall clock that jumps years ahead, back, and stands still changes no mark and no order", async () => {
  const steady = await held(() => null);
  const jumps = [
    "2036-01-01T00:00:00Z",
    "1999-12-31T23:59:59Z",
    "2026-11-14T08:00:00Z",
    "2026-11-14T08:00:00Z",
  ];
  const jumping = await held((step) => new Date(jumps[step] ?? "2026-11-14T08:00:00Z"));
  expect(jumping).toEqual(steady);
  expect(steady.marks.length).toBeGreaterThan(3);
});
