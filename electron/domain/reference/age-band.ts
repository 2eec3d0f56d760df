import { notTold } from "../privacy/hierarchy.ts";

/** True for an age band as files tell it: `25 to 29`, `unknown` or `not told`. */
export function isAgeBand(text: string): boolean {
  if (text === "unknown" || text === notTold) return true;
  const [, from = "", to = ""] = /^(\d{1,3}) to (\d{1,3})$/.exec(text) ?? [];
  return from !== "" && `${Number(from)} to ${Number(to)}` === text && Number(from) % 5 === 0
    ? Number(to) === Number(from) + 4
    : false;
}
