import { testCodes } from "../protocols/protocol.ts";
import { Refusal } from "../refusal.ts";
import { sentence } from "../words.ts";
import {
  type Candidate,
  type HoldReason,
  type Kept,
  leastK,
  type PrivacyRule,
  type Protected,
  type Suppressed,
} from "./rule.ts";

interface Judged {
  readonly reason: HoldReason;
  readonly candidate: Candidate;
}

/**
 * The plain rule: consented athletes and complete marks only; then every class (test, variant, age band, category and
 * quarter alike) with fewer than k athletes stays. Generalisation is fixed, nothing is searched for.
 */
export const plainRule: PrivacyRule = Object.freeze({ name: "plain-classes", protect });

function protect(candidates: readonly Candidate[], { k }: { readonly k: number }): Protected {
  if (!(k >= leastK)) throw new Refusal("bad-input", sentence("bundle.kTooSmall", { least: leastK }));
  const judged: Judged[] = [];
  const able: Kept[] = [];
  const taken = new Set<string>();
  for (const candidate of inFixedOrder(candidates)) {
    const reason = ownReason(candidate, taken);
    if (reason !== null) judged.push({ reason, candidate });
    else if (candidate.mark.state === "complete") {
      taken.add(placeOf(candidate));
      able.push(keep(candidate, candidate.mark.value));
    }
  }
  const classes = [...Map.groupBy(able, classOf).values()];
  const large = classes.filter((rows) => rows.length >= k);
  const small = classes.filter((rows) => rows.length < k);
  return {
    kept: large.flat(),
    suppressed: [...gather(judged), ...small.map(suppressedClass)],
    kReached: large.length === 0 ? null : Math.min(...large.map((rows) => rows.length)),
  };
}

/** What holds a candidate back by itself, whatever the others are; `taken` has the places that are filled. */
function ownReason(candidate: Candidate, taken: ReadonlySet<string>): HoldReason | null {
  if (candidate.consent !== "given") return candidate.consent;
  if (candidate.mark.state !== "complete") return "not-complete";
  return taken.has(placeOf(candidate)) ? "repeated" : null;
}

/** An athlete has at most one row for each test and variant. */
function placeOf({ athlete, test, variant }: Candidate): string {
  return JSON.stringify([athlete, test, variant]);
}

function keep({ athlete, test, ageBand, category, variant, quarter }: Candidate, value: number): Kept {
  return { athlete, test, ageBand, category, variant, quarter, value };
}

/** Rows of equal text can't be told apart by anything but the mark. An athlete has at most one row in a class. */
export function classOf(row: Pick<Kept, "test" | "variant" | "ageBand" | "category" | "quarter">): string {
  return JSON.stringify([row.test, row.variant, row.ageBand, row.category, row.quarter]);
}

function suppressedClass(rows: readonly Kept[]): Suppressed {
  const [{ test, variant, ageBand, category, quarter }] = rows as [Kept];
  const athletes = rows.map(({ athlete }) => athlete);
  return {
    reason: "small-class",
    count: rows.length,
    athletes,
    where: { test, variant, ageBand, category, quarter },
  };
}

function gather(judged: readonly Judged[]): Suppressed[] {
  const places = Map.groupBy(judged, ({ reason, candidate: { test, variant } }) =>
    JSON.stringify([reason, test, variant]),
  );
  return [...places.values()].map((rows) => {
    const [{ reason, candidate }] = rows as [Judged];
    const athletes = [...new Set(rows.map((row) => row.candidate.athlete))];
    return {
      reason,
      count: rows.length,
      athletes,
      where: { test: candidate.test, variant: candidate.variant },
    };
  });
}

/** An order that does not depend on how the candidates came, so that a repeated mark is decided the same way always. */
function inFixedOrder(candidates: readonly Candidate[]): Candidate[] {
  const key = ({ athlete, test, variant, ageBand, category, quarter, mark, consent }: Candidate) =>
    JSON.stringify([
      testCodes.indexOf(test),
      variant,
      ageBand,
      category,
      quarter,
      athlete,
      consent,
      mark.state,
      mark,
    ]);
  return candidates
    .map((candidate) => ({ candidate, key: key(candidate) }))
    .sort((a, b) => (a.key < b.key ? -1 : Number(a.key > b.key)))
    .map(({ candidate }) => candidate);
}
