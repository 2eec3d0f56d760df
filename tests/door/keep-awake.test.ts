import { expect, test } from "vitest";
import { keepAwake } from "../../electron/shell/windows/keep-awake.ts";
import { testDesk } from "./desk.ts";
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

test("the display stays awake for as long as a day is open, whatever its heats do, and is held once", async () => {
  const made = testDesk();
  const door = made.as("organiser").day;
  const system = blocker();
  const stop = keepAwake(made.desk, system);
  const { dayId } = await door.create({ date: "2026-11-14", title: "Autumn" });
  expect(system.held.size).toBe(0);
  await door.open();
  await door.open();
  expect(system.held.size).toBe(1);
  await door.close({ dayId });
  expect(system.held.size).toBe(0);
  stop();
});

test("a heat neither lets go of what the day holds nor holds a second time", async () => {
  const hall = await hallAt("core");
  const system = blocker();
  keepAwake(hall.desk, system);
  const heatId = await startedHeat(hall, "core", 2);
  expect(system.held.size).toBe(1);
  hall.clock.tick(60_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 59_000), sent(2, "stop", 59_500)] });
  await hall.heat.end({ heatId, by });
  expect(system.held.size).toBe(1);
});

test("in the demonstration it is held while the clock of a heat runs, and not by the open day", async () => {
  const made = testDesk();
  await made.as("organiser").day.openDemo();
  const system = blocker();
  keepAwake(made.desk, system);
  expect(system.held.size).toBe(0);
  const { heat } = made.as("organiser");
  const heatId = crypto.randomUUID();
  await heat.gather({ test: "push-up", heatId, lanes: 2, by });
  await heat.start({ heatId, startedAgoMs: 0 });
  expect(system.held.size).toBe(1);
  await heat.callOff({ heatId, by, reason: "alarm" });
  expect(system.held.size).toBe(0);
});

test("a day that is open when the program starts anew holds it at once, until the program ends", async () => {
  const hall = await hallAt("push-up");
  const system = blocker();
  const stop = keepAwake(hall.desk, system);
  expect(system.held.size).toBe(1);
  stop();
  expect(system.held.size).toBe(0);
  await hall.as("organiser").day.setRest({ restMinutes: 3 });
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
