import { ofEachTest } from "../tests/registry.ts";
import type { Spread } from "./hall.ts";

/** How long a turn and a change-over are taken to be at a station of which no earlier day tells. */
interface Assumed {
  readonly turn: Spread;
  readonly changeOver: Spread;
}

/** Seconds and spreads by test; ours, no source: shown as assumed until an organiser types them or days tell. */
const seconds: Readonly<Record<string, readonly [turn: number, changeOver: number]>> = {
  "push-up": [75, 60],
  agility: [150, 45],
  vertical: [120, 30],
  core: [120, 60],
  endurance: [330, 90],
};
const usualSigma = 0.3;
const usualChangeSigma = 0.4;

/** The times of each station where nothing is known. */
export const assumedTimes: Readonly<Record<string, Assumed>> = ofEachTest((test) => {
  const [turn, changeOver] = seconds[test] ?? [120, 60];
  return {
    turn: { median: turn, sigma: usualSigma },
    changeOver: { median: changeOver, sigma: usualChangeSigma },
  };
});
