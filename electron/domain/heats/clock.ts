/** A moment on the computer's clocks. */
export interface Moment {
  /** Monotonic: ms since the computer booted, the same for every process until it reboots. */
  readonly ms: number;
  /** The boot that `ms` counts from; see `sameBoot`. */
  readonly boot: string;
  /** Wall time, ISO 8601: jumps whenever somebody sets the clock. */
  readonly wall: string;
}

const estimate = /^estimate:(-?\d+)$/;
/** Two estimates of one boot differ by at most this, in seconds. */
const tolerance = 30;

/** Names a boot where the system gives it no name: by the second in which it must have happened. */
export function estimatedBoot(monotonicMs: number, wallMs: number): string {
  return `estimate:${Math.round((wallMs - monotonicMs) / 1000)}`;
}

/** True if two names mean the same boot. */
export function sameBoot(a: string, b: string): boolean {
  const [first, second] = [estimate.exec(a)?.[1], estimate.exec(b)?.[1]];
  if (first === undefined || second === undefined) return a === b;
  return Math.abs(Number(first) - Number(second)) <= tolerance;
}

/**
 * Returns the ms from one moment to a later one: by the monotonic clock, or, after a reboot in between, by wall time,
 * which is only as right as somebody set it.
 */
export function msBetween(
  from: Moment,
  to: Moment,
): { readonly ms: number; readonly clock: "monotonic" | "wall" } {
  if (sameBoot(from.boot, to.boot) && to.ms >= from.ms - 60_000) {
    return { ms: to.ms - from.ms, clock: "monotonic" };
  }
  return { ms: Date.parse(to.wall) - Date.parse(from.wall), clock: "wall" };
}

/** Returns the moment `ms` after another; before it, when negative. */
export function after(moment: Moment, ms: number): Moment {
  return {
    ms: moment.ms + ms,
    boot: moment.boot,
    wall: new Date(Date.parse(moment.wall) + ms).toISOString(),
  };
}
