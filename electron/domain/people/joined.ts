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
 * Returns what one record of two is: who they are as `kept` has it, with what only `gone` says filled in. The consents are
 * {@link joinedConsents}; where one of them was asked at the table, no sheet changes that any more.
 */
export function joinedFacts<Person extends Recorded>(kept: Person, gone: Person): Person {
  return {
    ...kept,
    number: kept.number === "" ? gone.number : kept.number,
    birthYear: kept.birthYear ?? gone.birthYear,
    category: kept.category ?? gone.category,
    ...joinedConsents(kept, gone),
    asked: kept.asked || gone.asked,
  };
}

type Consents = Pick<Recorded, "board" | "share" | "guardianConsent">;

/**
 * Of each consent the stricter answer stands. A record that was never asked has said no to nothing: the answers of one that
 * was asked stand alone, unless a sheet hid the other.
 */
function joinedConsents(kept: Recorded, gone: Recorded): Consents {
  if (kept.asked !== gone.asked) {
    const [asked, other] = kept.asked ? [kept, gone] : [gone, kept];
    const { board, share, guardianConsent } = asked;
    return { board: other.board === "hidden" ? "hidden" : board, share, guardianConsent };
  }
  const board = Math.max(strictness.indexOf(kept.board), strictness.indexOf(gone.board));
  return {
    board: strictness[board] ?? "hidden",
    share: kept.share && gone.share,
    guardianConsent: kept.guardianConsent && gone.guardianConsent,
  };
}
