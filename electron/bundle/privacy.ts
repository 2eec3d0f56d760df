import { toldAt } from "../domain/privacy/hierarchy.ts";
import type { HoldReason, ReleaseDecision, Suppressed, TestCoding } from "../domain/privacy/rule.ts";
import { type Contents, jsonFile, type TextFile } from "./contents.ts";
import { boundsOf, unitOf } from "./sheets.ts";

/** The reasons that a stranger may know: a missing guardian's consent is nobody's business outside. */
const toldReasons: readonly { readonly reason: string; readonly of: readonly HoldReason[] }[] = [
  { reason: "no consent to share", of: ["no-share", "no-guardian"] },
  { reason: "no complete mark", of: ["not-complete", "repeated"] },
  {
    reason: "fewer than k athletes alike, or a test not told",
    of: ["left-alone", "rare", "too-few", "untold"],
  },
];

/** Rounds up to the next multiple of k, so that no count says "one". */
function atMost(marks: number, k: number): number {
  return Math.ceil(marks / k) * k;
}

function told(suppressed: readonly Suppressed[], k: number) {
  return toldReasons.map(({ reason, of }) => {
    const marks = suppressed
      .filter((held) => of.includes(held.reason))
      .reduce((sum, { count }) => sum + count, 0);
    return { reason, marksAtMost: atMost(marks, k) };
  });
}

/** Describes how a test is reported; an unreported one is not named: it would say that somebody did it. */
function howTold({ levels }: ReleaseDecision, { test, variant, coding }: TestCoding) {
  if (levels === null || coding === null) return [];
  const { low } = boundsOf(test, { low: coding.below, high: null });
  const { low: from } = boundsOf(test, { low: coding.from, high: null });
  const step = coding.from > coding.below ? boundsOf(test, { low: coding.step, high: null }).low : null;
  return [
    {
      ...{ test, variant, unit: unitOf(test), step, bottomCodedBelow: low, topCodedFrom: from },
      ageBand: levels.ageBand === 0 ? "told" : toldAt("ageBand", "", levels.ageBand),
      category: levels.category === 0 ? "told" : toldAt("category", "", levels.category),
      leagueSize: levels.leagueSize === 0 ? "told" : toldAt("leagueSize", "", levels.leagueSize),
      quarter: levels.quarter === 0 ? "told" : "year only",
    },
  ];
}

const leftOut = [
  ...["name", "number", "bib", "league", "year of birth", "date"],
  ...["device", "volunteers", "notes", "order of entry", "exact marks"],
];

const meanings = {
  marks:
    "At least k different athletes, its own counted, share everything a row says: test, variant, age band, category, league size, quarter and the interval of the result.",
  profiles:
    "At least k different athletes, its own counted, share everything a row says: age band, category, league size, quarter, which of the included tests were done, and the intervals of all their results together.",
};

/** Makes the file on privacy: the strictness, its cost, and a neighbour's success. */
export function privacyFile(contents: Contents): TextFile {
  const { kind, strictness, likeness, risk, attack, subtraction, decisions, suppressed } = contents;
  const { k, l, suppression } = strictness;
  return jsonFile("privacy.json", {
    rule: kind === "marks" ? "unlinked-stepped-marks" : "linked-profiles",
    meaning: meanings[kind],
    ...{ k, kReached: likeness.k, l, lReached: likeness.l },
    suppressionAtMost: suppression,
    quasiIdentifiers: ["test", "variant", "age_band", "category", "league_size", "quarter", "marks"],
    rowsOfOneAthleteLinked: kind === "profiles",
    generalised: [
      {
        from: "year of birth",
        to: "age_band",
        how: "age reached in the year of the day, in fixed bands of five years, or not told",
      },
      { from: "date of the day", to: "quarter", how: "calendar quarter" },
      { from: "league", to: "league_size", how: "athletes of the league in fixed bands, or not told" },
      {
        from: "mark",
        to: "interval",
        how: "steps of a fixed ladder, all lines multiples of the step; the lowest and the highest results have one bound only",
      },
    ],
    tests: decisions.flatMap((decision) => decision.codings.flatMap((coding) => howTold(decision, coding))),
    leftOut,
    suppressed: told(suppressed, k),
    risk: { largest: rounded(risk.largest), mean: rounded(risk.mean), uniqueRows: risk.unique },
    neighbour: {
      knows: "every mark of everybody who agreed to share, with bib, age band, category and league",
      bibsMatchedForCertain: attack.certain,
      likeliestGuess: rounded(attack.largest),
    },
    neighbourWithoutTheHidden: {
      knows: "the same, but no result of those hidden on the big screen, and crosses everybody else off",
      marksFoundForCertain: subtraction.found,
    },
  });
}

function rounded(share: number): number {
  return Number(share.toFixed(4));
}
