import { z } from "zod";
import type { Caller } from "../lock/roles.ts";
import { type TestCode, testCodes } from "../tests/registry.ts";

/** What a device on the network is used for. No device ever has the organiser's rights. */
export const devicePlaceSchema = z.discriminatedUnion("role", [
  z.object({ role: z.literal("check-in") }),
  z.object({ role: z.literal("station"), test: z.enum(testCodes) }),
  /** Whoever judges the attempts of a station a second time, for a measuring study. */
  z.object({ role: z.literal("second-judge"), test: z.enum(testCodes) }),
  z.object({ role: z.literal("board") }),
]);

export type DevicePlace = z.infer<typeof devicePlaceSchema>;

/** A device that joined the table, as the door knows it. */
export interface JoinedDevice {
  readonly id: string;
  readonly name: string;
  readonly place: DevicePlace;
}

/** Returns the role with which a device at that place asks, and its station. */
export function callerAt(place: DevicePlace): Caller {
  return { role: place.role, station: testAt(place) };
}

/** Returns the test at whose station a place is; null for one at none. */
export function testAt(place: DevicePlace): TestCode | null {
  return "test" in place ? place.test : null;
}

/** Longest name of a device, in characters. */
const longestDeviceName = 40;

/** The name by which the table lists a device: one line that shows something, without control characters. */
export const deviceNameSchema = z
  .string()
  .trim()
  .min(1)
  .max(longestDeviceName)
  .regex(/^\P{C}*$/u);
