import type { TestCode } from "../tests/registry.ts";
import { type Coding, intervalOf, lossOfInterval, partNumber, partsOf } from "./coding.ts";
import { type Generalisable, hierarchies } from "./hierarchy.ts";
import { ladders } from "./ladder.ts";
import type { Attribute, Generalisation } from "./problem.ts";
import type { Quasi } from "./quasi.ts";

/** An athlete as the search sees them: quasi-identifiers, and the league that a size band must not give away. */
export interface Subject extends Omit<Quasi, "variant"> {
  readonly league: number;
}

/**
 * The share of each part of a record in its loss, in thousandths. The marks are the purpose of a bundle; without age
 * and category they say less; league size and quarter go first. Ours, no source.
 */
const quasiWeights: Readonly<Record<Generalisable, number>> = {
  quarter: 50,
  category: 150,
  ageBand: 150,
  leagueSize: 50,
};
export const marksWeight = 600;

/** Returns a quasi-identifier with all levels of its hierarchy. */
export function quasiAttribute(name: Generalisable, people: readonly Subject[]): Attribute {
  const leagues = people.map(({ league }) => league);
  const choices = hierarchies[name].map(({ told, loss }, level): Generalisation => {
    const codes = numbered(people.map((person) => told(person[name])));
    const losses = people.map(() => loss);
    return name === "leagueSize" && level === 0
      ? { codes, losses, tells: true, mixed: leagues }
      : { codes, losses, tells: level === 0 };
  });
  return { kind: "quasi", weight: quasiWeights[name], choices };
}

/** Returns the marks of a test under each coding; `null` for a record without one. */
export function markAttribute(
  test: TestCode,
  values: readonly (number | null)[],
  codings: readonly (Coding | null)[],
  weight: number,
): Attribute {
  const { usual } = ladders[test];
  const choices = codings.map((coding): Generalisation => {
    if (coding === null) {
      return {
        codes: values.map(() => 0),
        losses: values.map((value) => (value === null ? 0 : 1000)),
        tells: false,
      };
    }
    return {
      codes: values.map((value) => (value === null ? 0 : 1 + partNumber(value, coding))),
      losses: values.map((value) => (value === null ? 0 : lossOfInterval(intervalOf(value, coding), usual))),
      tells: true,
      ends: [1, partsOf(coding)],
    };
  });
  return { kind: "mark", weight, choices };
}

/** Numbers the texts from 0; equal texts get equal numbers. */
function numbered(texts: readonly string[]): number[] {
  const numbers = new Map<string, number>();
  for (const text of texts) if (!numbers.has(text)) numbers.set(text, numbers.size);
  return texts.map((text) => numbers.get(text) ?? 0);
}
