import type { Draws } from "./draws.ts";
import type { Customs } from "./floor.ts";
import type { Athlete, Break } from "./hall.ts";
import { at } from "./numbers.ts";

/** True for somebody who is here already. */
export function isHere({ comes, arrives }: Athlete): boolean {
  return comes >= 1 && arrives.until <= 0;
}

/**
 * Returns when somebody who is not here at moment 0 arrives on a drawn day; null for never. Everybody means to come at some
 * moment of their window; some are late by an exponential time. Whoever could have come and has not has a smaller
 * chance to come at all (Bayes's rule).
 */
export function arrivalOf(athlete: Athlete, index: number, draws: Draws, customs: Customs): number | null {
  const { from, until } = athlete.arrives;
  const ways = waysToCome(athlete.arrives, customs);
  const away = ways.inTime + ways.lateAhead + ways.lateBehind;
  if (at(draws.comes, index) >= chanceNow(athlete.comes, draws.attendance, away)) return null;
  const way = at(draws.late, index) * away;
  const meant = Math.max(0, from) + at(draws.arrives, index) * (Math.max(0, until) - Math.max(0, from));
  if (way < ways.inTime) return meant;
  const isAhead = way < ways.inTime + ways.lateAhead;
  const share = isAhead ? (way - ways.inTime) / ways.lateAhead : at(draws.arrives, index);
  // Exponential times forget how long they have lasted.
  return (isAhead ? meant : 0) - customs.lateBy * Math.log(1 - Math.min(share, 1 - 1e-9));
}

/** Returns the chances, of somebody who comes, to be still away now and in time, late for later, and late already. */
function waysToCome({ from, until }: Break, { late, lateBy }: Customs) {
  const ahead = shareAhead(from, until);
  return {
    inTime: (1 - late) * ahead,
    lateAhead: late * ahead,
    lateBehind: late * (1 - ahead) * stillLate(Math.min(0, from), Math.min(0, until), lateBy),
  };
}

/** Returns which share of a window is still to come. */
function shareAhead(from: number, until: number): number {
  if (until < 0) return 0;
  return from >= 0 || until === from ? 1 : until / (until - from);
}

/** Returns the chance that somebody late who meant to come at any moment from `from` to `until`, both past, is still away. */
function stillLate(from: number, until: number, lateBy: number): number {
  if (lateBy <= 0) return 0;
  if (until === from) return Math.exp(until / lateBy);
  return (lateBy * (Math.exp(until / lateBy) - Math.exp(from / lateBy))) / (until - from);
}

/** Returns the chance to come still, of somebody who comes at all with `comes` and, if so, is still away with `away`. */
function chanceNow(comes: number, attendance: number, away: number): number {
  if (comes >= 1) return away > 0 ? 1 : 0;
  const odds = (comes / (1 - comes)) * Math.exp(attendance) * away;
  return odds / (1 + odds);
}
