import { z } from "zod";
import { usualPort } from "../domain/devices/invitation.ts";
import type { KeyKeep } from "./identity.ts";

/** A port that a program may take without special rights. */
export const portSchema = z.int().min(1024).max(65_535);

/** The switch from one run of the program to the next. */
const keptSchema = z.strictObject({
  format: z.literal("tapeline-network"),
  version: z.literal(1),
  port: portSchema,
  /** Where it was on, for which day, and on which calendar day (ISO 8601); null when it was off. */
  on: z.strictObject({ address: z.string(), dayId: z.int(), date: z.string() }).nullable(),
  /** The devices that were let go, by the hashes of their tokens; none in the files of before. */
  gone: z
    .array(z.strictObject({ tokenHash: z.string().length(64), why: z.enum(["sentAway", "closed"]) }))
    .default([]),
});

export type KeptSwitch = z.infer<typeof keptSchema>;

/** Where the key and the switch are kept. */
export interface NetworkKeep {
  readonly key: KeyKeep;
  /** The switch as it was written last; null when it never was. */
  read(): string | null;
  /** Writes it whole or not at all, and syncs it. Throws when it can't. */
  write(text: string): void;
}

const off: KeptSwitch = { format: "tapeline-network", version: 1, port: usualPort, on: null, gone: [] };

/** Reads the switch; one that can't be read is off. */
export function readSwitch(keep: NetworkKeep): KeptSwitch {
  try {
    const text = keep.read();
    return text === null ? off : keptSchema.parse(JSON.parse(text));
  } catch (error) {
    console.error("The network's switch can't be read, so it is off:", error);
    return off;
  }
}

/** Keeps the switch; on a full disk it holds until the program ends. */
export function writeSwitch(keep: NetworkKeep, kept: KeptSwitch): void {
  try {
    keep.write(JSON.stringify(kept, null, 2));
  } catch (error) {
    console.error("The network's switch could not be kept:", error);
  }
}
