import type { Quasi } from "./quasi.ts";

/** The quasi-identifiers that can be generalised; the variant can't, because its marks would not compare any more. */
export const generalisable = ["quarter", "category", "ageBand", "leagueSize"] as const;
export type Generalisable = (typeof generalisable)[number];

/** What stands in place of a value that was generalised away. */
export const notTold = "not told";

/** How far up its hierarchy each quasi-identifier is told; 0 is as it is. */
export type Levels = Readonly<Record<Generalisable, number>>;

interface Level {
  readonly told: (value: string) => string;
  /** Thousandths of what the value says. */
  readonly loss: number;
}

const asItIs: Level = { told: (value) => value, loss: 0 };
const hidden: Level = { told: () => notTold, loss: 1000 };

/**
 * Ages are told in their fixed bands or not at all: bands that were merged on one day and not on another could be
 * subtracted. Of a quarter the year can stay.
 */
export const hierarchies: Readonly<Record<Generalisable, readonly [Level, ...Level[]]>> = Object.freeze({
  quarter: [asItIs, { told: (value) => value.slice(0, 4), loss: 500 }],
  category: [asItIs, hidden],
  ageBand: [asItIs, hidden],
  leagueSize: [asItIs, hidden],
});

/** A quasi-identifier's value at a level of its hierarchy. */
export function toldAt(name: Generalisable, value: string, level: number): string {
  const found = hierarchies[name][level];
  if (found === undefined) throw new RangeError(`There is no level ${level} of ${name}.`);
  return found.told(value);
}

/** The quasi-identifiers as they leave. */
export type ToldQuasi = Readonly<Record<Generalisable, string>>;

export function toldQuasi(quasi: Quasi, levels: Levels): ToldQuasi {
  return {
    quarter: toldAt("quarter", quasi.quarter, levels.quarter),
    category: toldAt("category", quasi.category, levels.category),
    ageBand: toldAt("ageBand", quasi.ageBand, levels.ageBand),
    leagueSize: toldAt("leagueSize", quasi.leagueSize, levels.leagueSize),
  };
}
