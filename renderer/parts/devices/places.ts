import { useTranslation } from "react-i18next";
import type { DevicePlace } from "../../../electron/domain/devices/place.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";

/** A place at which somebody works. */
export type VolunteerPlace = Exclude<DevicePlace, { readonly role: "board" }>;

/** What a device can be used for, in the order of a day. */
export const devicePlaces: readonly DevicePlace[] = [
  { role: "check-in" },
  ...testCodes.map((test) => ({ role: "station", test }) as const),
  { role: "board" },
];

/** Returns the number of a place in that order. */
export function numberOfPlace(place: DevicePlace): number {
  return devicePlaces.findIndex((each) => each.role === place.role && testOf(each) === testOf(place));
}

function testOf(place: DevicePlace): string | null {
  return place.role === "station" ? place.test : null;
}

/** Returns the names of places: "Check-in", "Core: staged plank", "Big screen". */
export function useNameOfPlace(): (place: DevicePlace) => string {
  const { t } = useTranslation(["common", "devices"]);
  const testWord = useTestWords();
  return (place) => {
    if (place.role === "station") return testWord(place.test, "station");
    return place.role === "check-in" ? t("common:place.checkIn") : t("devices:board");
  };
}
