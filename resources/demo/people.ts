import { shuffled } from "../../electron/domain/chance.ts";
import { everybody, type Named } from "./names.ts";

/** How an athlete wants to be compared. */
type Category = "women" | "men" | "open";

/** An invented athlete as a roster has them, with what the invented results follow. */
export interface Person extends Named {
  readonly birthYear: number;
  readonly category: Category;
  readonly guardianConsent: "yes" | "no" | "";
  readonly board: "name" | "bib" | "hidden";
  readonly share: "yes" | "no";
  readonly variant: "full" | "knee";
  /** How many of the two earlier days they were at, and whether they test on the day itself. */
  readonly earlierDays: 0 | 1 | 2;
  readonly tests: boolean;
}

/** How many of each category were born in which years: large classes that a bundle keeps, and small ones. */
const born: readonly (readonly [category: Category, from: number, to: number, count: number])[] = [
  ["women", 1997, 2001, 13],
  ["women", 1992, 1996, 13],
  ["women", 1987, 1991, 8],
  ["open", 1997, 2001, 7],
  ["women", 2002, 2006, 4],
  ["open", 1992, 1996, 3],
  ["men", 1992, 1996, 3],
  ["men", 1987, 1991, 2],
  ["women", 1982, 1986, 2],
  ["women", 1979, 1979, 1],
  ["women", 2009, 2009, 2],
  ["open", 2008, 2009, 2],
];

/** Born from this year on may be under 18 on the day. */
const firstMinor = 2008;
/** Of those who may be under 18, every second brings a guardian's consent. */
const consents = ["yes", "no", "yes", ""] as const;
const absent = 10;

/** Everybody of the three leagues, in the order of the roster. */
export function makePeople(random: () => number): Person[] {
  const births = shuffled(
    born.flatMap(([category, from, to, count]) =>
      Array.from({ length: count }, () => ({ category, birthYear: between(random, from, to) })),
    ),
    random,
  );
  const away = new Set(shuffled([...everybody.keys()], random).slice(0, absent));
  let minors = 0;
  return everybody.map((named, index) => {
    const birth = births[index] ?? { category: "open" as const, birthYear: 1995 };
    const isMinor = birth.birthYear >= firstMinor;
    const guardianConsent = isMinor ? (consents[minors % consents.length] ?? "") : "";
    if (isMinor) minors += 1;
    return {
      ...named,
      ...birth,
      guardianConsent,
      board: pick(random, ["name", "name", "name", "bib", "bib", "hidden"] as const),
      share: random() < 0.82 ? "yes" : "no",
      variant: random() < 0.22 ? "knee" : "full",
      earlierDays: pick(random, [0, 1, 2, 2, 2] as const),
      tests: !away.has(index),
    };
  });
}

/** A whole number from `from` to `to`, both included. */
export function between(random: () => number, from: number, to: number): number {
  return from + Math.floor(random() * (to - from + 1));
}

/** One of the values. */
export function pick<Value>(random: () => number, values: readonly [Value, ...Value[]]): Value {
  return values[Math.floor(random() * values.length)] ?? values[0];
}

/**
 * Near enough to a standard normal number: twelve uniform ones less six. Only additions, so that every machine gets the
 * same bits.
 */
export function roughlyNormal(random: () => number): number {
  return Array.from({ length: 12 }, random).reduce((sum, part) => sum + part, -6);
}
