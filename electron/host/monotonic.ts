import { readFileSync } from "node:fs";
import { estimatedBoot } from "../domain/heats/clock.ts";

/** The machine's monotonic clock: ms since it started, and which start that was. Never jumps with the wall clock. */
export interface Monotonic {
  readonly ms: number;
  readonly boot: string;
}

/** Whole process: an estimate made anew after somebody set the wall clock would name another start of the machine. */
const boot = bootId();

/** Reads the monotonic clock, which another process after this one reads on. */
export function monotonic(): Monotonic {
  return { ms: Number(process.hrtime.bigint()) / 1e6, boot };
}

/** Linux names each start of the machine; elsewhere it is known by when it must have been. */
function bootId(): string {
  if (process.platform === "linux") return readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
  return estimatedBoot(Number(process.hrtime.bigint()) / 1e6, Date.now());
}
