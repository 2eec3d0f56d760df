import { expect, test } from "vitest";
import { grainsPerCentimetre } from "../../electron/domain/length.ts";
import { by, hallAt, liveOf, sent, startedHeat } from "./heat-hall.ts";
import { past } from "./station-day.ts";

test("the doubted jump is the one that is asked about, not the newest, at its lane and in the list", async () => {
  const hall = await hallAt("vertical");
  const heatId = await startedHeat(hall, "vertical", 1);
  // A second jump of 95 cm, which is asked about (protocol.ts), between two of 40.
  const touches = [2600, 3150, 2590].map((mm, index) => sent(1, "touch", 2_000 + index, { mm }));
  await hall.heat.tap({ heatId, by, events: [sent(1, "reach", 1_000, { mm: 2200 }), ...touches] });
  const [lane] = liveOf(await hall.heat.view({ test: "vertical" })).lane;
  expect(lane?.doubts).toHaveLength(1);
  const doubted = lane?.entered.find(({ attempt }) => attempt.attemptId === lane.doubted);
  expect(doubted?.attempt.seen).toMatchObject({ touchReach: { unit: "cm", halves: 630 } });
  const { recent } = await hall.station.view({ test: "vertical" });
  const asked = recent.filter(({ doubts }) => doubts.length > 0);
  expect(asked.map(({ attempt }) => attempt.attemptId)).toEqual([lane?.doubted]);
});

test("a jump far above the last result is the doubted one, though later ones are lower", async () => {
  const hall = await hallAt("vertical");
  past(hall, 1, "vertical", 39.5 * grainsPerCentimetre, "2026-05-02");
  const heatId = await startedHeat(hall, "vertical", 1);
  const touches = [2600, 2770, 2560].map((mm, index) => sent(1, "touch", 2_000 + index, { mm }));
  await hall.heat.tap({ heatId, by, events: [sent(1, "reach", 1_000, { mm: 2200 }), ...touches] });
  const [lane] = liveOf(await hall.heat.view({ test: "vertical" })).lane;
  const doubted = lane?.entered.find(({ attempt }) => attempt.attemptId === lane.doubted);
  expect(doubted?.attempt.seen).toMatchObject({ touchReach: { unit: "cm", halves: 554 } });
});
