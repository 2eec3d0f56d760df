import { readlinkSync } from "node:fs";
import { constants, setPriority } from "node:os";

/**
 * Lets the door's own thread go before the one that calls this where both want the same processor. Linux alone knows threads
 * by number; elsewhere the call would mean the whole program, and all threads stay alike.
 */
export function goBehindEntries(): void {
  if (process.platform !== "linux") return;
  const thread = Number(readlinkSync("/proc/thread-self").split("/").at(-1));
  setPriority(thread, constants.priority.PRIORITY_BELOW_NORMAL);
}
