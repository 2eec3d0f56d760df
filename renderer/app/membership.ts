import { z } from "zod";
import { devicePlaceSchema } from "../../electron/domain/devices/place.ts";
import { wipeKeep } from "./device-keep.ts";
import { isJoinedProgram, tellTable } from "./table.ts";

/** What this laptop's own shell knows of the table that it joined, also while the table is away. */
const membershipSchema = z.intersection(
  z.object({ otherKey: z.boolean(), language: z.string() }),
  z.discriminatedUnion("is", [
    z.object({ is: z.literal("apart") }),
    z.object({ is: z.literal("joined"), address: z.string(), name: z.string(), place: devicePlaceSchema }),
    z.object({ is: z.literal("over"), why: z.enum(["sentAway", "closed", "unknown"]) }),
  ]),
);

export type Membership = z.infer<typeof membershipSchema>;

/** Asks the shell of a joined program how it stands to the table. */
export async function membershipNow(): Promise<Membership> {
  const answer = await fetch("/device/kept");
  return membershipSchema.parse(await answer.json());
}

/** Longer than the shell waits for the table to hear of it, in ms. */
const patienceMs = 10_000;

/**
 * Lets the table go, and deletes what this device keeps. A laptop shows its first screen again, and this page goes with its
 * window; a browser shows the page to join. False where no answer comes to a browser: then it is still the table's.
 */
export async function leaveTable(): Promise<boolean> {
  const answer = await tellTable("/device/leave", {}, patienceMs);
  if (isJoinedProgram) return true;
  if (answer === null) return false;
  await wipeKeep();
  // The next person here enters under their own initials.
  sessionStorage.clear();
  location.replace("/join.html");
  return true;
}
