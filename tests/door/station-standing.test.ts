import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { cm } from "../lengths.ts";
import { refusalOf } from "./desk.ts";
import { by, hallAt, liveOf, sent, startedHeat } from "./heat-hall.ts";
import { entry, reps, type StationDay, stationDay } from "./station-day.ts";

async function corrected(day: StationDay, attemptId: string, bib: number, count: number): Promise<string> {
  const replaces = { attemptId, reason: "Slip" };
  const correction = entry(day.idOf(bib), "push-up", reps(count), { replaces });
  await day.station.enter(correction);
  return correction.attempts[0]?.id ?? "";
}

test("what stands in the place of an attempt: itself, its correction, the correction of that, or nothing", async () => {
  const day = await stationDay();
  const first = entry(day.idOf(1), "push-up", reps(15));
  await day.station.enter(first);
  const attemptId = first.attempts[0]?.id ?? "";
  const standing = () => day.station.standing({ test: "push-up", attemptId });
  expect(await standing()).toMatchObject({
    attempt: { attemptId, void: null },
    corrected: false,
    told: { written: { number: "15" }, news: { standing: "first" } },
  });
  const second = await corrected(day, attemptId, 1, 16);
  expect(await standing()).toMatchObject({
    attempt: { attemptId: second, void: null },
    corrected: true,
    told: { written: { number: "16" } },
  });
  // It was somebody else's.
  const third = await corrected(day, second, 2, 16);
  expect(await standing()).toMatchObject({
    attempt: { attemptId: third, who: { bib: 2 } },
    told: { written: { number: "16" } },
  });
  await day.station.void({ attemptId: third, reason: "nobody's", by: "QA" });
  expect(await standing()).toMatchObject({
    attempt: { attemptId: third, void: { reason: "nobody's", by: "QA" } },
    corrected: true,
    told: null,
  });
});

test("an attempt of no day at hand is not found", async () => {
  const day = await stationDay();
  const unknown = day.station.standing({ test: "push-up", attemptId: randomUUID() });
  expect(await refusalOf(unknown)).toEqual({ key: "record.unknownAttempt" });
});

test("a lane tells each of its results as it is stored, after a correction too", async () => {
  const hall = await hallAt("vertical");
  const heatId = await startedHeat(hall, "vertical", 1);
  const touches = [245, 247.5].map((touch, index) => sent(1, "touch", index + 2, { length: cm(touch) }));
  await hall.heat.tap({ heatId, by, events: [sent(1, "reach", 1, { length: cm(210) }), ...touches] });
  const entered = async () => liveOf(await hall.heat.view({ test: "vertical" })).lane[0]?.entered ?? [];
  const slip = (await entered())[1]?.attempt.attemptId ?? "";
  const right = entry(
    hall.idOf(1),
    "vertical",
    { standingReach: cm(210), touchReach: cm(249) },
    {
      replaces: { attemptId: slip, reason: "misread" },
      sure: true,
    },
  );
  await hall.station.enter(right);
  expect(
    (await entered()).map(({ attempt, corrected: isNew }) => [attempt.seen, attempt.void, isNew]),
  ).toEqual([
    [{ standingReach: cm(210), touchReach: cm(245) }, null, false],
    [{ standingReach: cm(210), touchReach: cm(249) }, null, true],
  ]);
});
