import { fingerprint } from "../tests/fingerprint.ts";
import { parametersOf } from "../tests/parameters-of.ts";
import { defaultParameters, ofEachTest, protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import { inUnit } from "../units.ts";
import { handInAgeBands, handInCategories } from "./hand-in-coding.ts";
import {
  everybody,
  type GroupOfMarks,
  type Percentile,
  percentilesTold,
  type ReferenceTable,
} from "./table.ts";

/** A bound in the test's unit, and how far the other one lies above it; null where one is open. */
type Bounds = number | null;

/** A group as the page has it: kept short, since the page brings all of them along. */
type ShortGroup = readonly [
  variant: string,
  category: string,
  ageBand: string,
  marks: number,
  halls: number,
  countsAs: number,
  from: string,
  to: string,
  first: number,
  bounds: readonly Bounds[],
];

/** A test in the page: the rules by which most of its results in the table were made, and its groups by them. */
interface PageTest {
  readonly parameters: unknown;
  /** True for the standard rules. */
  readonly standard: boolean;
  readonly groups: readonly ShortGroup[];
}

/** What the page for everybody has of a reference table. */
export interface PageData extends Pick<ReferenceTable, "publisher" | "made" | "validUntil"> {
  /** The publisher's key in the short form that people compare. */
  readonly key: string;
  readonly tests: Readonly<Record<TestCode, PageTest>>;
}

/** Categories and age bands that somebody can say of themselves. */
const categories: ReadonlySet<string> = new Set([...handInCategories, everybody]);
const ageBands: ReadonlySet<string> = new Set([...handInAgeBands, everybody]);

/** Returns what the page has of a table. Of each test it has one set of rules, so that one sheet of instructions says how. */
export function pageDataOf(table: ReferenceTable, key: string): PageData {
  const { publisher, made, validUntil } = table;
  return { ...{ publisher, key, made, validUntil }, tests: ofEachTest((test) => pageTestOf(table, test)) };
}

function pageTestOf({ groups }: ReferenceTable, test: TestCode): PageTest {
  const all = groups.filter((group) => group.test === test);
  const byRules = Map.groupBy(all, rulesOf);
  const standard = fingerprint(test, "", defaultParameters(test)).slice(test.length + 1);
  const counted = [...byRules].map(([rules, some]) => ({ rules, some, marks: marksOf(some) }));
  const most = counted.reduce((best, each) => (each.marks > best.marks ? each : best), {
    ...{ rules: standard, some: byRules.get(standard) ?? [], marks: marksOf(byRules.get(standard) ?? []) },
  });
  const [any] = most.some;
  const parameters =
    any === undefined ? defaultParameters(test) : parametersOf(test, any.variant, any.fingerprint);
  if (parameters === undefined) throw new TypeError(`No ${test} test is run by ${most.rules}.`);
  const known = most.some.filter(
    ({ category, ageBand }) => categories.has(category) && ageBands.has(ageBand),
  );
  return { parameters, standard: most.rules === standard, groups: known.map(shortened) };
}

/** A fingerprint without test and variant, which are those of one day's rules. */
function rulesOf({ test, variant, fingerprint: text }: GroupOfMarks): string {
  return text.slice((variant === "" ? test : `${test}/${variant}`).length + 1);
}

function marksOf(groups: readonly GroupOfMarks[]): number {
  return groups.reduce((sum, { marks }) => sum + marks, 0);
}

function shortened(group: GroupOfMarks): ShortGroup {
  const { test, variant, category, ageBand, marks, halls, countsAs, from, to, percentiles } = group;
  const { grain } = protocolOf(test);
  const first = percentiles[0]?.percentile ?? 0;
  const last = percentiles.at(-1)?.percentile ?? 0;
  const inUnits = (bound: Bounds) => (bound === null ? null : inUnit(grain, bound));
  const bounds = percentilesTold
    .filter((percentile) => percentile >= first && percentile <= last)
    .flatMap((percentile) => {
      const told = percentiles.find((each) => each.percentile === percentile);
      return [inUnits(told?.low ?? null), inUnits(told?.high ?? null)];
    });
  return [variant, category, ageBand, marks, halls, countsAs, from, to, first, bounds];
}

/** Returns a test's groups in the page in full. */
export function groupsOf({ tests }: PageData, test: TestCode): GroupOfMarks[] {
  const { parameters, groups } = tests[test];
  return groups.map(([variant, category, ageBand, marks, halls, countsAs, from, to, first, bounds]) => ({
    ...{ test, variant, fingerprint: fingerprint(test, variant, parameters) },
    ...{ category: category as GroupOfMarks["category"], ageBand, marks, halls, countsAs, from, to },
    percentiles: percentilesOf(test, first, bounds),
  }));
}

function percentilesOf(test: TestCode, first: number, bounds: readonly Bounds[]): Percentile[] {
  const { perUnit } = protocolOf(test).grain;
  const inGrains = (bound: Bounds | undefined) => (bound == null ? null : Math.round(bound * perUnit));
  const told = percentilesTold.filter((percentile) => percentile >= first);
  return told.slice(0, bounds.length / 2).flatMap((percentile, index) => {
    const [low, high] = [inGrains(bounds[2 * index]), inGrains(bounds[2 * index + 1])];
    return low === null && high === null ? [] : [{ percentile, low, high }];
  });
}

/** The number of results in the page, and of halls behind the largest of its groups. */
export function sizeOf(data: PageData): { readonly marks: number; readonly halls: number } {
  const whole = testCodes
    .flatMap((test) => groupsOf(data, test))
    .filter(({ category, ageBand }) => category === everybody && ageBand === everybody);
  return { marks: marksOf(whole), halls: Math.max(0, ...whole.map(({ halls }) => halls)) };
}
