import type { Quasi } from "./quasi.ts";

/** The quasi-identifiers that can be generalised; the variant can't, because its marks would not compare any more. */
export const generalisable = ["quarter", "category", "ageBand", "leagueSize"] as const;
export type Generalisable = (typeof generalisable)[number];

/** Replaces a value that was generalised away. */
export const notTold = "not told";

/** The level of each quasi-identifier in its hierarchy; 0 is the exact value. */
export type Levels = Readonly<Record<Generalisable, number>>;

interface Level {
  readonly told: (value: string) => string;
  /** Thousandths of the value's information. */
  readonly loss: number;
}

const asItIs: Level = { told: (value) => value, loss: 0 };
const hidden: Level = { told: () => notTold, loss: 1000 };

/**
 * The hierarchy of each quasi-identifier. Ages are reported in their fixed bands or not at all: bands merged on one day
 * and not on another could be subtracted. Of a quarter the year can stay.
 */
export const hierarchies: Readonly<Record<Generalisable, readonly [Level, ...Level[]]>> = Object.freeze({
  quarter: [asItIs, { told: (value) => value.slice(0, 4), loss: 500 }],
  category: [asItIs, hidden],
  ageBand: [asItIs, hidden],
  leagueSize: [asItIs, hidden],
});

/** Returns a quasi-identifier's value at a level of its hierarchy. */
export function toldAt(name: Generalisable, value: string, level: number): string {
  const found = hierarchies[name][level];
  if (found === undefined) throw new RangeError(`There is no level ${level} of ${name}.`);
  return found.told(value);
}

/** The quasi-identifiers as released. */
export type ToldQuasi = Readonly<Record<Generalisable, string>>;

export function toldQuasi(quasi: Quasi, levels: Levels): ToldQuasi {
  return {
    quarter: toldAt("quarter", quasi.quarter, levels.quarter),
    category: toldAt("category", quasi.category, levels.category),
    ageBand: toldAt("ageBand", quasi.ageBand, levels.ageBand),
    leagueSize: toldAt("leagueSize", quasi.leagueSize, levels.leagueSize),
  };
}
