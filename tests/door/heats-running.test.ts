import { expect, test } from "vitest";
import { needsAwake } from "../../electron/api/awake.ts";
import { anyHeatRuns, runsAtTable } from "../../electron/api/heat/running.ts";
import { refusalOf } from "./desk.ts";
import { deviceAt } from "./devices-of-a-day.ts";
import { by, hallAt, sent } from "./heat-hall.ts";

/** Which running heats keep the table from locking, and its computer awake. */

const leap = "vertical" as const;
const pin = "482913";
const wanted = () => ({ test: leap, heatId: crypto.randomUUID(), lanes: 1, by });

async function hallWithWall() {
  const hall = await hallAt(leap);
  const { heat } = hall.from(deviceAt(hall, "Red wall", leap));
  return { hall, wall: heat, table: hall.as("organiser") };
}

test("a device's heat runs and keeps the computer awake, until it ends or the day is closed", async () => {
  const { hall, wall } = await hallWithWall();
  expect(anyHeatRuns(hall.desk)).toBe(false);
  const { heatId } = await wall.gather(wanted());
  expect([anyHeatRuns(hall.desk), runsAtTable(hall.desk)]).toEqual([true, false]);
  await wall.tap({ heatId, by, events: [sent(1, "aside", 1)] });
  expect(anyHeatRuns(hall.desk)).toBe(true);
  await wall.end({ heatId, by });
  expect(anyHeatRuns(hall.desk)).toBe(false);
  await wall.gather(wanted());
  expect([anyHeatRuns(hall.desk), needsAwake(hall.desk)]).toEqual([true, true]);
  await hall.as("organiser").day.close({ dayId: hall.dayId });
  expect([anyHeatRuns(hall.desk), needsAwake(hall.desk)]).toEqual([false, false]);
  hall.desk.close();
});

test("a device's heat does not keep the table from locking, by hand or idle; one of the table itself does", async () => {
  const { hall, wall, table } = await hallWithWall();
  await table.lock.setPin({ pin });
  await wall.gather(wanted());
  await table.lock.lockNow();
  expect(hall.desk.lock.who().role).toBe("locked");
  await table.lock.unlock({ pin });
  const { heatId } = await table.heat.gather(wanted());
  expect([anyHeatRuns(hall.desk), runsAtTable(hall.desk)]).toEqual([true, true]);
  expect(await refusalOf(table.lock.lockNow())).toMatchObject({ key: "lock.heatRuns" });
  hall.clock.pass(60);
  hall.desk.lock.lookAtIdle(runsAtTable(hall.desk));
  expect(hall.desk.lock.who().role).toBe("organiser");
  await table.heat.end({ heatId, by, setAside: true });
  hall.clock.pass(60);
  hall.desk.lock.lookAtIdle(runsAtTable(hall.desk));
  expect(hall.desk.lock.who().role).toBe("locked");
  hall.desk.close();
});
