import { randomUUID } from "node:crypto";
import type { JoinedDevice } from "../../electron/domain/devices/place.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { keepDevice } from "../../electron/store/tables/devices.ts";
import type { StationDay } from "./station-day.ts";

/** A device at a test's station, in the store as if the table had said yes. */
export function deviceAt(
  day: Pick<StationDay, "desk" | "dayId">,
  name: string,
  test: TestCode,
): JoinedDevice {
  const device: JoinedDevice = { id: randomUUID(), name, place: { role: "station", test } };
  const hash = randomUUID().replaceAll("-", "").padEnd(64, "0");
  day.desk.store.write([], (db) => keepDevice(db, day.dayId, { ...device, joinedAt: "" }, hash));
  return device;
}
