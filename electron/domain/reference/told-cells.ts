import { notTold } from "../privacy/hierarchy.ts";
import { protocolOf, type TestCode } from "../tests/registry.ts";
import { fromUnit } from "../units.ts";

/** True for an age band as files tell it: `25 to 29`, `unknown` or `not told`. */
export function isAgeBand(text: string): boolean {
  if (text === "unknown" || text === notTold) return true;
  const [, from = "", to = ""] = /^(\d{1,3}) to (\d{1,3})$/.exec(text) ?? [];
  return from !== "" && `${Number(from)} to ${Number(to)}` === text && Number(from) % 5 === 0
    ? Number(to) === Number(from) + 4
    : false;
}

/** True for a quarter as files tell it: `2026-Q4`, or the year alone. */
export function isQuarter(text: string): boolean {
  return /^\d{4}(-Q[1-4])?$/.test(text);
}

/** Reads a bound in the test's unit, in grains: null where it is open, undefined where it is none. */
export function boundIn(test: TestCode, text: string): number | null | undefined {
  if (text === "") return null;
  const read = /^\d+(\.\d+)?$/.test(text) ? fromUnit(protocolOf(test).grain, text) : null;
  return read !== null && "value" in read ? read.value : undefined;
}
