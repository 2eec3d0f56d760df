import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { dayAtHand } from "../../electron/store/tables/days.ts";
import { addPeople } from "../door/people-of-a-day.ts";
import { setState } from "../door/station-day.ts";
import { joinAs, openTable, post, type Table } from "./table.ts";

const pushUp = "push-up" as const;

/** A table whose device runs push-ups with one athlete. */
async function pushUpsAtDevice() {
  const table = await openTable();
  const cookie = await joinAs(table, { role: "station", test: pushUp }, "Red row");
  const [device] = table.network.view().devices;
  const dayId = dayAtHand(table.desk.store.db)?.id;
  if (device === undefined || dayId === undefined) throw new Error("Nobody has joined.");
  const [athleteId = 0] = addPeople(
    table,
    [{ league: "Foundry Town", name: "Ada Rill", number: "01" }],
    dayId,
  );
  setState(table, dayId, athleteId, "testing", 1);
  const { heatId } = await table
    .from(device)
    .heat.gather({ test: pushUp, heatId: randomUUID(), lanes: 1, by: "QA" });
  await table.from(device).heat.start({ heatId, startedAgoMs: 0 });
  return { table, cookie, holder: device.id };
}

const tellsOfItself = (table: Table, cookie: string) =>
  post(table, "/device/here", { waiting: 0, battery: null }, { cookie });

async function deviceOf(table: Table, holder: string | null) {
  const { heat } = await table.as("organiser").heat.view({ test: pushUp, holder });
  return heat === null ? null : { device: heat.device, isThere: heat.deviceIsThere };
}

test("a device's heat says whether the device is there: heard of lately, and joined", async () => {
  const { table, cookie, holder } = await pushUpsAtDevice();
  await tellsOfItself(table, cookie);
  expect(await deviceOf(table, holder)).toEqual({ device: "Red row", isThere: true });
  table.clock.tick(15_000);
  expect((await deviceOf(table, holder))?.isThere).toBe(true);
  table.clock.tick(2_000);
  expect((await deviceOf(table, holder))?.isThere).toBe(false);
  await tellsOfItself(table, cookie);
  expect((await deviceOf(table, holder))?.isThere).toBe(true);
  table.network.sendAway(holder);
  expect(await deviceOf(table, holder)).toEqual({ device: null, isThere: false });
  await table.close();
});
