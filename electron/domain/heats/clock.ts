/** A moment on the machine's clocks. */
export interface Moment {
  /** Monotonic: ms since the machine started, the same for every process until it starts again. */
  readonly ms: number;
  /** Which start of the machine that was; see `sameBoot`. */
  readonly boot: string;
  /** Wall time, ISO 8601: jumps whenever somebody sets the clock. */
  readonly wall: string;
}

const estimate = /^estimate:(-?\d+)$/;
/** Two estimates of one start of the machine are no further apart, in seconds. */
const tolerance = 30;

/** Names a start of the machine where the system gives it no name: the second in which it must have been. */
export function estimatedBoot(monotonicMs: number, wallMs: number): string {
  return `estimate:${Math.round((wallMs - monotonicMs) / 1000)}`;
}

/** Whether two names mean the same start of the machine. */
export function sameBoot(a: string, b: string): boolean {
  const [first, second] = [estimate.exec(a)?.[1], estimate.exec(b)?.[1]];
  if (first === undefined || second === undefined) return a === b;
  return Math.abs(Number(first) - Number(second)) <= tolerance;
}

/**
 * Ms from one moment to a later one: by the monotonic clock, or, where the machine started anew in between, by wall
 * time, which is only as right as whoever set it.
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

/** So many ms after a moment; before, when negative. */
export function after(moment: Moment, ms: number): Moment {
  return {
    ms: moment.ms + ms,
    boot: moment.boot,
    wall: new Date(Date.parse(moment.wall) + ms).toISOString(),
  };
}
