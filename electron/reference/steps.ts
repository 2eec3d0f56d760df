import { readFileSync } from "node:fs";

function textOf(name: string): string {
  return readFileSync(new URL(`sql/${name}.sql`, import.meta.url), "utf8");
}

/** The queries of a merge, in their order; what they need is said at their beginnings. */
export const steps = Object.freeze({
  mark: textOf("0-mark"),
  handed: textOf("1-handed"),
  tables: textOf("1-tables"),
  groups: textOf("2-groups"),
  sizes: textOf("3-sizes"),
  weigh: textOf("4-weigh"),
  percentiles: textOf("5-percentiles"),
  standing: textOf("6-standing"),
  spread: textOf("7-spread"),
  compare: textOf("8-compare"),
});
