import type { Span } from "../told.ts";
import { breachOf } from "./fits.ts";
import type { Schedule, Shop } from "./shop.ts";

/**
 * Returns the earlier of two schedules for a hall that has more than before: what was found for it, or what was found
 * without, which still fits since nobody has to use a place more. A rule that calls whoever is next can end later with one
 * place more (Graham 1966, Bell System Technical Journal 45(9)): that is the rule's doing and not the place's.
 */
export function withMore(before: Schedule, larger: Shop, found: Schedule): Schedule {
  return before.end < found.end && breachOf(larger, before) === null ? before : found;
}

/**
 * Returns what may be told of a change that can be left unused, a place, a lane, a judge or less rest: at worst it saves
 * nothing. Its lower end stays as it is: that no day would end later is not promised.
 */
export function neverLonger(saved: Span): Span {
  return { ...saved, middle: Math.max(0, saved.middle), until: Math.max(0, saved.until) };
}
