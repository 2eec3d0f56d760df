import type { HoldReason, Suppressed } from "../../../domain/privacy/rule.ts";
import { type Contents, jsonFile, type TextFile } from "./contents.ts";

/** The reasons as a stranger may know them: who lacks a guardian's consent is nobody's business outside. */
const toldReasons: readonly { readonly reason: string; readonly of: readonly HoldReason[] }[] = [
  { reason: "no consent to share", of: ["no-share", "no-guardian"] },
  { reason: "no complete mark", of: ["not-complete", "repeated"] },
  { reason: "class of fewer than k athletes", of: ["small-class"] },
];

/** Up to the next multiple of k, so that no count says "one". */
function atMost(rows: number, k: number): number {
  return Math.ceil(rows / k) * k;
}

function told(suppressed: readonly Suppressed[], k: number) {
  return toldReasons.map(({ reason, of }) => {
    const rows = suppressed
      .filter((held) => of.includes(held.reason))
      .reduce((sum, { count }) => sum + count, 0);
    return { reason, rowsAtMost: atMost(rows, k) };
  });
}

/** What was done so that nobody can be found: the rule, how strict, and what it cost. */
export function privacyFile({ ruleName, k, kReached, suppressed }: Contents): TextFile {
  return jsonFile("privacy.json", {
    rule: ruleName,
    meaning:
      "At least k different athletes, its own counted, stand behind the test, variant, age band, category and quarter of every row.",
    k,
    kReached,
    quasiIdentifiers: ["test", "variant", "age_band", "category", "quarter"],
    rowsOfOneAthleteLinked: false,
    generalised: [
      {
        from: "year of birth",
        to: "age_band",
        how: "age reached in the year of the day, in fixed bands of five years",
      },
      { from: "date of the day", to: "quarter", how: "calendar quarter" },
    ],
    leftOut: [
      "name",
      "number",
      "bib",
      "league",
      "year of birth",
      "date",
      "device",
      "volunteers",
      "notes",
      "order of entry",
    ],
    suppressed: told(suppressed, k),
    marks: "Marks are exact. They were shown in the hall, so somebody who was there may recognise one.",
  });
}
