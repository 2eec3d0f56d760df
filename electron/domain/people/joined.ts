/** The consents and facts that two records of one person may have otherwise. */
interface Recorded {
  readonly number: string;
  readonly birthYear: number | null;
  readonly category: string | null;
  readonly guardianConsent: boolean;
  readonly board: "name" | "bib" | "hidden";
  readonly share: boolean;
  readonly asked: boolean;
}

const strictness = ["name", "bib", "hidden"] as const;

/**
 * Returns what one record of two is: who they are as `kept` has it, with what only `gone` says filled in. Of each consent
 * the stricter answer stands; where one of them was asked at the table, no sheet changes that any more.
 */
export function joinedFacts<Person extends Recorded>(kept: Person, gone: Person): Person {
  const board = Math.max(strictness.indexOf(kept.board), strictness.indexOf(gone.board));
  return {
    ...kept,
    number: kept.number === "" ? gone.number : kept.number,
    birthYear: kept.birthYear ?? gone.birthYear,
    category: kept.category ?? gone.category,
    guardianConsent: kept.guardianConsent && gone.guardianConsent,
    board: strictness[board] ?? "hidden",
    share: kept.share && gone.share,
    asked: kept.asked || gone.asked,
  };
}
