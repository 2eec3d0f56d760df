import { definitionOf, protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryMark } from "./day.ts";
import type { Rooted } from "./roots.ts";
import { type Shift, shiftOf } from "./shift.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** The judge of a mark by its initials: one person, several (one per direction), or nobody (a sheet without any). */
type Judge =
  | { readonly kind: "named"; readonly name: string }
  | { readonly kind: "several" }
  | { readonly kind: "unnamed" };

/** The complete marks of one test and variant that one person entered; values in grains. */
export interface JudgeRow {
  readonly test: TestCode;
  readonly variant: string;
  readonly judge: Judge;
  readonly marks: Spread;
  /** Strictness in judging push-ups; null for other tests, and where no cadence was judged one by one. */
  readonly cadences: Cadences | null;
  /** Only for push-ups of a named judge: judges are the largest error there. */
  readonly compared: Comparison | null;
}

interface Cadences {
  readonly athletes: number;
  readonly judged: number;
  readonly off: number;
}

/**
 * The changes since the last test of a judge's athletes, against those of everybody else's. too-few: too little data;
 * alike: chance alone may make such a difference; higher, lower: it seldom does.
 */
interface Comparison {
  readonly finding: "too-few" | "alike" | "higher" | "lower";
  readonly own: Spread | null;
  readonly others: Spread | null;
  /** Null when too few. */
  readonly shift: Shift | null;
}

/** Fewest athletes on either side for a finding about a judge (ours, no source). */
export const leastToCompare = 5;
/** Largest chance that any comparison of a day is wrong when judges do not differ (Bonferroni). */
const errorRate = 0.05;

interface Judged {
  readonly judge: Judge;
  readonly mark: SummaryMark;
  readonly value: number;
  readonly attempts: readonly Rooted[];
}

/** Returns rows by test, variant and judge; several judges and nobody come last. A correction is the first judge's. */
export function judgesOf(marks: readonly SummaryMark[], standing: readonly Rooted[]): JudgeRow[] {
  const made = Map.groupBy(standing, ({ attempt }) => keyOf(attempt));
  const judged = marks.flatMap((mark): Judged[] => {
    if (mark.mark.state !== "complete") return [];
    const attempts = made.get(keyOf(mark)) ?? [];
    return [{ judge: judgeOf(attempts), mark, value: mark.mark.value, attempts }];
  });
  return testCodes.flatMap((test) =>
    protocolOf(test).variants.flatMap((variant) =>
      rowsOf(
        test,
        variant,
        judged.filter(({ mark }) => mark.test === test && mark.variant === variant),
      ),
    ),
  );
}

function keyOf(of: {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
}): string {
  return `${of.athleteId} ${of.test} ${of.variant}`;
}

/** The key of a sheet without initials. */
const nobody = "sheet";

function judgeOf(attempts: readonly Rooted[]): Judge {
  const names = new Map(attempts.map(({ root }) => [idOf(root.enteredBy), root]));
  const [first] = names.values();
  if (names.size > 1) return { kind: "several" };
  if (first === undefined || first.enteredBy.trim() === "") return { kind: "unnamed" };
  if (first.source === "sheet" && first.enteredBy === nobody) return { kind: "unnamed" };
  return { kind: "named", name: idOf(first.enteredBy) };
}

/** Returns initials in a station's spelling, so that lower-case ones on a sheet are the same person's. */
function idOf(enteredBy: string): string {
  return enteredBy.trim().toUpperCase();
}

function rowsOf(test: TestCode, variant: string, judged: readonly Judged[]): JudgeRow[] {
  const groups = [...Map.groupBy(judged, ({ judge }) => orderOf(judge))].sort(([a], [b]) => (a < b ? -1 : 1));
  const named = groups.filter(([, some]) => some[0]?.judge.kind === "named" && canCompare(some, judged));
  return groups.flatMap(([, some]) => {
    const [first] = some;
    const spread = spreadOf(some.map(({ value }) => value));
    if (first === undefined || spread === null) return [];
    const { judge } = first;
    const isJudged = definitionOf(test).judged !== undefined;
    return [
      {
        ...{ test, variant, judge, marks: spread },
        cadences: isJudged ? cadencesOf(test, some) : null,
        compared: isJudged && judge.kind === "named" ? compare(some, judged, named.length) : null,
      },
    ];
  });
}

/** Sorts judges by name; then several, then nobody. */
function orderOf(judge: Judge): string {
  return judge.kind === "named" ? `0 ${judge.name}` : judge.kind === "several" ? "1" : "2";
}

function changesOf(some: readonly Judged[]): number[] {
  return some.flatMap(({ mark }) => mark.news?.change ?? []);
}

function othersThan(some: readonly Judged[], all: readonly Judged[]): Judged[] {
  const own = new Set(some);
  return all.filter((each) => !own.has(each));
}

function canCompare(some: readonly Judged[], all: readonly Judged[]): boolean {
  const counts = [changesOf(some).length, changesOf(othersThan(some, all)).length];
  return counts.every((count) => count >= leastToCompare);
}

/** @param comparisons how many there are of this test and variant: the more, the wider each interval */
function compare(some: readonly Judged[], all: readonly Judged[], comparisons: number): Comparison {
  const [own, others] = [changesOf(some), changesOf(othersThan(some, all))];
  const spreads = { own: spreadOf(own), others: spreadOf(others) };
  const shift = canCompare(some, all) ? shiftOf(own, others, 1 - errorRate / Math.max(1, comparisons)) : null;
  if (shift === null) return { finding: "too-few", ...spreads, shift };
  const finding = shift.low > 0 ? "higher" : shift.high < 0 ? "lower" : "alike";
  return { finding, ...spreads, shift };
}

/** Counts off cadences among all judged one by one; a paper tally has only those at the end. */
function cadencesOf(test: TestCode, some: readonly Judged[]): Cadences | null {
  const { judged, protocol } = definitionOf(test);
  const signs = some.flatMap(({ attempts }) =>
    attempts.flatMap(({ attempt }) => judged?.(protocol.attempt.parse(attempt.seen)) ?? []),
  );
  if (signs.length === 0) return null;
  const all = signs.join("");
  return { athletes: signs.length, judged: all.length, off: all.split("x").length - 1 };
}
