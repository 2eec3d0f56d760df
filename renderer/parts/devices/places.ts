import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { type DevicePlace, testAt } from "../../../electron/domain/devices/place.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";

/** A place at which somebody works. */
export type VolunteerPlace = Exclude<DevicePlace, { readonly role: "board" }>;

/** What a device can be used for, in the order of a day. */
export const devicePlaces: readonly DevicePlace[] = [
  { role: "check-in" },
  ...testCodes.map((test) => ({ role: "station", test }) as const),
  ...testCodes.map((test) => ({ role: "second-judge", test }) as const),
  { role: "board" },
];

/** Returns the number of a place in that order. */
export function numberOfPlace(place: DevicePlace): number {
  return devicePlaces.findIndex((each) => each.role === place.role && testAt(each) === testAt(place));
}

/**
 * Returns the numbers of the places to choose from: a second judge's only where a study of the day wants readings, and the
 * one that a device has.
 */
export function useOfferedPlaces(own?: DevicePlace): number[] {
  const trpc = useTRPC();
  const tests = useQuery(trpc.study.secondJudges.queryOptions()).data ?? [];
  return devicePlaces.flatMap((place, number) => {
    const isOffered = place.role !== "second-judge" || tests.includes(place.test);
    return isOffered || (own !== undefined && numberOfPlace(own) === number) ? [number] : [];
  });
}

/** Returns the names of places: "Check-in", "Core: staged plank", "Big screen". */
export function useNameOfPlace(): (place: DevicePlace) => string {
  const { t } = useTranslation(["common", "devices", "join"]);
  const testWord = useTestWords();
  return (place) => {
    if (place.role === "station") return testWord(place.test, "station");
    if (place.role === "second-judge")
      return t("join:secondJudge", { station: testWord(place.test, "station") });
    return place.role === "check-in" ? t("common:place.checkIn") : t("devices:board");
  };
}
