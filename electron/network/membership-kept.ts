import { z } from "zod";
import { deviceNameSchema, devicePlaceSchema } from "../domain/devices/place.ts";

/** What a joined program keeps from one run to the next, so that it comes back to its place. */
const keptSchema = z.strictObject({
  format: z.literal("tapeline-joined"),
  version: z.literal(1),
  address: z.union([z.ipv4(), z.ipv6()]),
  port: z.int().min(1).max(65_535),
  /** The SHA-256 of the table's public key, in hexadecimal digits. */
  key: z.string().regex(/^[0-9a-f]{64}$/),
  name: deviceNameSchema,
  place: devicePlaceSchema,
  /** The token, as the keeper wrote it. */
  token: z.string().regex(/^[\w-]{43}$/),
});

export type KeptMembership = z.infer<typeof keptSchema>;

/** Where a membership is kept: readable by this computer's user alone, and sealed by the system where it can. */
export interface MembershipKeep {
  /** What was written last; null when there is none. */
  read(): string | null;
  /** Writes it whole or not at all, and syncs it; null forgets it. Throws when it can't. */
  write(text: string | null): void;
}

/** Reads the membership; one that can't be read is none, and this device has to join again. */
export function readMembership(keep: MembershipKeep): KeptMembership | null {
  try {
    const text = keep.read();
    return text === null ? null : keptSchema.parse(JSON.parse(text));
  } catch (error) {
    console.error("The table that this program joined can't be read:", error);
    return null;
  }
}

/** Keeps the membership; on a full disk it holds until the program ends. */
export function writeMembership(keep: MembershipKeep, kept: KeptMembership | null): void {
  try {
    keep.write(kept === null ? null : JSON.stringify(kept, null, 2));
  } catch (error) {
    console.error("The table that this program joined could not be kept:", error);
  }
}
