import type { Desk } from "../door/desk.ts";

/** One more than the largest seed that the store keeps. */
const seeds = 2 ** 31;

/** Draws the seed of a day's plan. */
export function newSeed(desk: Pick<Desk, "random">): number {
  return Math.floor(desk.random() * seeds);
}
