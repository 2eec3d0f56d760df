import type { TestCode } from "../../../domain/tests/registry.ts";
import { protocolOf } from "../../../domain/tests/registry.ts";
import { inUnit } from "../../../domain/units.ts";

/** Grains in the test's unit as sheets give them; middles fall on quarters of a grain, so five decimals hold any. */
export function inTestUnit(test: TestCode, grains: number | null | undefined): number | null {
  if (grains === null || grains === undefined) return null;
  return Number(inUnit(protocolOf(test).grain, grains).toFixed(5));
}

/** Ms as seconds to the tenth. */
export function inSeconds(ms: number | null | undefined): number | null {
  return ms === null || ms === undefined ? null : Math.round(ms / 100) / 10;
}

export function unitOf(test: TestCode): string {
  return protocolOf(test).grain.unit;
}

/** `mark` less `previous` in grains, the better or not: a shorter circuit is below zero. Null without both. */
export function lessPrevious(value: number | null, previous: number | null | undefined): number | null {
  return value === null || previous === null || previous === undefined ? null : value - previous;
}
