import { asLeftAlone, countWithheld, sortOut, tablesOf, type Withheld } from "./able.ts";
import { markAttribute, marksWeight, quasiAttribute } from "./attributes.ts";
import { type Coding, codingsOf, intervalOf } from "./coding.ts";
import { generalisable, type Levels, toldQuasi } from "./hierarchy.ts";
import { ladders } from "./ladder.ts";
import { leftAlone } from "./left-alone.ts";
import type { Attribute } from "./problem.ts";
import type { Able, Candidate, Protected, ReleaseDecision, ReleasedRow, Strictness } from "./rule.ts";
import { bestNode } from "./search.ts";
import { limitOf, requireK } from "./strictness.ts";

/**
 * Protects unlinked marks. Each test and variant is a table of its own, since its marks compare with no others and
 * nothing links them. Of all levels of its quasi-identifiers and codings of its marks, the one is chosen that loses
 * least and leaves every released mark among at least k athletes of the same class. A table without such a choice is
 * withheld. So are the marks of hidden athletes who would be left alone: a few, where coarsening all would cost
 * everyone.
 * @throws Refusal `bad-input` when k is too small.
 */
export function protectMarks(candidates: readonly Candidate[], strictness: Strictness): Protected {
  requireK(strictness.k);
  const { able, suppressed } = sortOut(candidates);
  const tables = tablesOf(able).map(({ rows }) => decideTable(rows, strictness));
  return {
    kind: "marks",
    kept: tables.flatMap(({ kept }) => kept),
    suppressed: [...suppressed, ...countWithheld(tables.flatMap(({ held }) => held))],
    decisions: tables.map(({ decision }) => decision),
    able,
  };
}

interface Decided {
  readonly kept: readonly ReleasedRow[];
  readonly held: readonly Withheld[];
  readonly decision: ReleaseDecision;
}

/** Decides, and decides again without the athletes who would be left alone, until there are none. */
function decideTable(rows: readonly Able[], strictness: Strictness): Decided {
  const decided = decide(rows, strictness);
  const alone = leftAlone(decided.kept, rows);
  if (alone.size === 0) return decided;
  // Never empty: every class has two intervals, and those of the lone ones are one.
  const rest = decideTable(
    rows.filter(({ athlete }) => !alone.has(athlete)),
    strictness,
  );
  return {
    kept: rest.kept,
    held: [...rest.held, ...asLeftAlone(rows, alone)],
    decision: { ...rest.decision, able: rows.length },
  };
}

/** Returns the attributes of a table's records (at least one) and the codings to try on its marks. */
export function problemOf(rows: readonly Able[]): { attributes: Attribute[]; codings: Coding[] } {
  const values = rows.map(({ value }) => value);
  const [{ test }] = rows as [Able];
  const codings = codingsOf(values, ladders[test].steps);
  const marks = markAttribute(test, values, codings, marksWeight);
  return { attributes: [marks, ...generalisable.map((name) => quasiAttribute(name, rows))], codings };
}

function decide(rows: readonly Able[], { k, l, suppression }: Strictness): Decided {
  const { attributes, codings } = problemOf(rows);
  const [{ test, variant }] = rows as [Able];
  const demands = { k, l, limit: limitOf(rows.length, suppression), tests: 1 };
  const node = codings.length === 0 ? null : bestNode(rows.length, attributes, demands);
  const coding = node === null ? undefined : codings[node.chosen[0] ?? 0];
  if (node === null || coding === undefined) {
    const decision = {
      codings: [{ test, variant, coding: null }],
      able: rows.length,
      kept: 0,
      levels: null,
      loss: 1,
    };
    return { kept: [], held: rows.map((row) => ({ ...row, reason: "too-few" })), decision };
  }
  const levels = levelsOf(node.chosen.slice(1));
  const kept = rows
    .filter((_row, at) => node.suppressed[at] === false)
    .map((row) => ({
      athlete: row.athlete,
      quasi: toldQuasi(row, levels),
      marks: [{ test, variant, ...intervalOf(row.value, coding) }],
    }));
  const decision = {
    ...{ codings: [{ test, variant, coding }], able: rows.length, kept: kept.length, levels },
    loss: node.loss / (rows.length * 1_000_000),
  };
  const out = rows.filter((_row, at) => node.suppressed[at] === true);
  return { kept, held: out.map((row) => ({ ...row, reason: "rare" })), decision };
}

/** Returns the chosen levels, in the order of {@link generalisable}. */
export function levelsOf(chosen: readonly number[]): Levels {
  const [quarter = 0, category = 0, ageBand = 0, leagueSize = 0] = chosen;
  return { quarter, category, ageBand, leagueSize };
}
