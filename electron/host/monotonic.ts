import { readFileSync } from "node:fs";
import { estimatedBoot } from "../domain/heats/clock.ts";

/** The computer's monotonic clock: ms since it booted, and which boot that was. Never jumps with the wall clock. */
export interface Monotonic {
  readonly ms: number;
  readonly boot: string;
}

/** Fixed for the whole process: a new estimate after somebody set the wall clock would name another boot. */
const boot = bootId();

/** Reads the monotonic clock, which continues in later processes. */
export function monotonic(): Monotonic {
  return { ms: Number(process.hrtime.bigint()) / 1e6, boot };
}

/** Returns the boot's id on Linux; elsewhere the estimated time of the boot. */
function bootId(): string {
  if (process.platform === "linux") return readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
  return estimatedBoot(Number(process.hrtime.bigint()) / 1e6, Date.now());
}
