import { protocolOf, type TestCode } from "../../../domain/tests/registry.ts";
import { inUnit } from "../../../domain/units.ts";

/** Converts grains to the test's unit on sheets; medians fall on quarters of a grain, so five decimals are enough. */
export function inTestUnit(test: TestCode, grains: number | null | undefined): number | null {
  if (grains === null || grains === undefined) return null;
  return Number(inUnit(protocolOf(test).grain, grains).toFixed(5));
}

/** Converts ms to seconds, to the tenth. */
export function inSeconds(ms: number | null | undefined): number | null {
  return ms === null || ms === undefined ? null : Math.round(ms / 100) / 10;
}

export function unitOf(test: TestCode): string {
  return protocolOf(test).grain.unit;
}

/** Subtracts `level` from `value` in grains: a shorter circuit is below zero. Null without both. */
export function lessLevel(value: number | null, level: number | null | undefined): number | null {
  return value === null || level === null || level === undefined ? null : value - level;
}
