import type { TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { calls } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import { devicesOf } from "../../store/tables/devices.ts";
import type { Holder } from "../../store/tables/heats.ts";

/**
 * Returns who looks at a station's calls, for what all others see of them alike: a device that called somebody there, and
 * null for the table and for every device that did not.
 */
export function callerOf(db: ReadableDb, day: Day, test: TestCode, holder: Holder): Holder {
  const own = calls(db, day.id).some((call) => call.test === test && call.holder === holder);
  return own ? holder : null;
}

/**
 * Returns the athletes whom other devices at a test's station called, each with that device's name. They are those
 * devices' to test. Whom the table called, or a device that has left the station since, is for everybody there.
 */
export function calledElsewhere(
  db: ReadableDb,
  day: Day,
  { test, holder }: { readonly test: TestCode; readonly holder: Holder },
): ReadonlyMap<number, string> {
  const there = devicesOf(db, day.id).filter(({ place }) => place.role === "station" && place.test === test);
  return new Map(
    calls(db, day.id)
      .filter((call) => call.test === test && call.holder !== holder)
      .flatMap((call) => {
        const device = there.find(({ id }) => id === call.holder);
        return device === undefined ? [] : [[call.athleteId, device.name]];
      }),
  );
}
