import type { TestCode } from "../tests/registry.ts";
import type { Spread } from "./hall.ts";

/** How long a turn and a change-over are taken to be at a station of which no earlier day tells. */
interface Assumed {
  readonly turn: Spread;
  readonly changeOver: Spread;
}

/**
 * The times of each station of which nothing is known, in seconds: what the rules take with their own parameters, and
 * a guess of what goes around it. Shown as assumed until an organiser types them or days tell. Common practice, no source:
 * - push-up: four beats to count in, then 22 reps of 3 s;
 * - agility: two trials of 10 s, a minute to breathe between them, half a minute to step in and to read the count out;
 * - vertical: standing reach, then three jumps half a minute apart;
 * - core: half of the cycle of 240 s, and some hold on more than twice as long;
 * - endurance: three rounds of 90 reps at four reps in five seconds or a little more;
 * - change-overs: bibs called, lanes taken, a word of instruction; longer where many come and where they lie down.
 */
export const assumedTimes: Readonly<Record<TestCode, Assumed>> = Object.freeze({
  "push-up": { turn: { median: 72, sigma: 0.4 }, changeOver: { median: 60, sigma: 0.4 } },
  agility: { turn: { median: 110, sigma: 0.25 }, changeOver: { median: 40, sigma: 0.4 } },
  vertical: { turn: { median: 110, sigma: 0.25 }, changeOver: { median: 30, sigma: 0.4 } },
  core: { turn: { median: 120, sigma: 0.45 }, changeOver: { median: 60, sigma: 0.4 } },
  endurance: { turn: { median: 360, sigma: 0.25 }, changeOver: { median: 90, sigma: 0.4 } },
});
