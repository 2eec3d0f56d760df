import { closeKeep, wipeKeep } from "./device-keep.ts";
import { dayOver, type Standing, tellTable } from "./table.ts";

/**
 * Deletes what a device keeps where the table let it go. One that the table merely does not know keeps all, and sends it
 * once it has joined again.
 */
export async function heedTable({ state }: Standing): Promise<void> {
  if (state === "sentAway") await wipeKeep();
  if (state !== "closed") return;
  // A big screen thanks everybody, whatever its disk does.
  dayOver.set(true);
  await closeKeep();
  // The table listens until every device that was there has said so.
  await tellTable("/device/heard", {});
}

/** True if this device has to join, anew or for the first time. */
export function mustJoin({ state }: Standing): boolean {
  return state === "unknown" || state === "sentAway" || state === "closed";
}
