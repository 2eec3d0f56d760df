import { expect, test } from "vitest";
import { keepAwake } from "../../electron/shell/keep-awake.ts";
import { by, hallAt, sent, startedHeat } from "./heat-hall.ts";

/** Stands in for the system's own, and says what is held. */
function blocker() {
  const held = new Set<number>();
  let count = 0;
  return {
    held,
    start(type: string) {
      expect(type).toBe("prevent-display-sleep");
      count += 1;
      held.add(count);
      return count;
    },
    stop: (id: number) => held.delete(id),
  };
}

test("the display stays awake from the start of a heat to its end, and is held once", async () => {
  const hall = await hallAt("core");
  const system = blocker();
  const stop = keepAwake(hall.desk, system);
  expect(system.held.size).toBe(0);
  const heatId = await startedHeat(hall, "core", 2);
  expect(system.held.size).toBe(1);
  hall.clock.tick(60_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 59_000), sent(2, "stop", 59_500)] });
  expect(system.held.size).toBe(1);
  await hall.heat.end({ heatId, by });
  expect(system.held.size).toBe(0);
  stop();
});

test("a heat that runs when the program starts anew keeps the display awake at once, until the program ends", async () => {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 1);
  const system = blocker();
  const stop = keepAwake(hall.desk, system);
  expect(system.held.size).toBe(1);
  stop();
  expect(system.held.size).toBe(0);
  await hall.heat.tap({ heatId, by, events: [sent(1, "off", 0)] });
  expect(system.held.size).toBe(0);
});

test("nothing is held once the day is closed over a heat that nobody ended", async () => {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 1);
  const system = blocker();
  keepAwake(hall.desk, system);
  hall.clock.tick(30_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 30_000)] });
  expect(system.held.size).toBe(1);
  await hall.as("organiser").day.close({ dayId: hall.dayId });
  expect(system.held.size).toBe(0);
});
