import type { Draws } from "./draws.ts";
import type { Customs } from "./floor.ts";
import type { Athlete } from "./hall.ts";
import { at } from "./numbers.ts";

/** True for somebody who is here already. */
export function isHere({ comes, arrives }: Athlete): boolean {
  return comes >= 1 && arrives.until <= 0;
}

/**
 * Returns when somebody who is not here at moment 0 arrives on a drawn day; null for never. Whoever has not come though
 * their window is half over has a smaller chance to come at all, by Bayes's rule; whoever comes after it is late by a
 * time that forgets how long it has lasted.
 */
export function arrivalOf(athlete: Athlete, index: number, draws: Draws, customs: Customs): number | null {
  const { from, until } = athlete.arrives;
  const inWindow = (1 - customs.late) * shareAhead(from, until);
  const afterwards = customs.late * (until >= 0 ? 1 : Math.exp(until / Math.max(1, customs.lateBy)));
  if (at(draws.comes, index) >= chanceNow(athlete.comes, draws.attendance, inWindow + afterwards))
    return null;
  const start = Math.max(0, from);
  if (at(draws.late, index) * (inWindow + afterwards) < inWindow) {
    return start + at(draws.arrives, index) * Math.max(0, until - start);
  }
  return Math.max(0, until) - customs.lateBy * Math.log(1 - at(draws.arrives, index));
}

/** Returns which share of a window is still to come. */
function shareAhead(from: number, until: number): number {
  if (until < 0) return 0;
  return from >= 0 || until === from ? 1 : until / (until - from);
}

/** Returns the chance to come still, of somebody who comes at all with `comes` and, if so, is still away with `away`. */
function chanceNow(comes: number, attendance: number, away: number): number {
  if (comes >= 1) return 1;
  const odds = (comes / (1 - comes)) * Math.exp(attendance) * away;
  return odds / (1 + odds);
}
