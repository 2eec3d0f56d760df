import { definitionOf, protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryMark } from "./day.ts";
import type { Rooted } from "./roots.ts";
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
}

interface Cadences {
  readonly athletes: number;
  readonly judged: number;
  readonly off: number;
}

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
  return groups.flatMap(([, some]) => {
    const [first] = some;
    const spread = spreadOf(some.map(({ value }) => value));
    if (first === undefined || spread === null) return [];
    const isJudged = definitionOf(test).judged !== undefined;
    const cadences = isJudged ? cadencesOf(test, some) : null;
    return [{ test, variant, judge: first.judge, marks: spread, cadences }];
  });
}

/** Sorts judges by name; then several, then nobody. */
function orderOf(judge: Judge): string {
  return judge.kind === "named" ? `0 ${judge.name}` : judge.kind === "several" ? "1" : "2";
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
