import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import type { Draws } from "./draws.ts";
import type { TrueHall } from "./true-hall.ts";

/** Seconds of a turn: at least `floor`, then a gamma time, at most `cap`. */
const shapes: Record<TestCode, { floor: number; shape: number; mean: number; cap: number }> = {
  "push-up": { floor: 10, shape: 5, mean: 45, cap: 200 },
  agility: { floor: 70, shape: 3, mean: 40, cap: 400 },
  vertical: { floor: 60, shape: 4, mean: 50, cap: 400 },
  core: { floor: 20, shape: 4, mean: 160, cap: 330 },
  endurance: { floor: 230, shape: 5, mean: 190, cap: 900 },
};

/** Volunteers need a sixth more in the first half hour, and a twentieth more after the second hour. */
const firstMinutes = { until: 30 * 60, factor: 1.16 };
const lastMinutes = { from: 120 * 60, factor: 1.05 };

/** Seconds that an athlete's turn at a test takes, if it starts at `since`. */
export function turnSeconds(
  hall: TrueHall,
  draws: Draws,
  athlete: number,
  test: TestCode,
  since: number,
): number {
  const { floor, shape, mean, cap } = shapes[test];
  const seconds = Math.min(cap, floor + draws.gamma(`turn of ${athlete} at ${test}`, shape, mean));
  const hour =
    since < firstMinutes.until ? firstMinutes.factor : since > lastMinutes.from ? lastMinutes.factor : 1;
  return seconds * hour * (hall.stations.get(test)?.slowness ?? 1);
}

/** Seconds from the call until an athlete stands there: most come at once, one of twelve dawdles. */
export function wayThere(draws: Draws, athlete: number, test: TestCode): number {
  const way = 5 + draws.gamma(`way of ${athlete} to ${test}`, 1, 12);
  const dawdles = draws.happens(`${athlete} dawdles before ${test}`, 0.08);
  return dawdles ? way + draws.uniform(`dawdling of ${athlete} before ${test}`, 30, 150) : way;
}
