import type { TestCode } from "../tests/registry.ts";
import { asLeftAlone, countWithheld, sortOut, tablesOf, type Withheld } from "./able.ts";
import { markAttribute, marksWeight, quasiAttribute } from "./attributes.ts";
import { type Coding, codingsOf, intervalOf } from "./coding.ts";
import { generalisable, type Levels, toldQuasi } from "./hierarchy.ts";
import { ladders } from "./ladder.ts";
import { leftAlone } from "./left-alone.ts";
import { levelsOf } from "./marks-rule.ts";
import type { Attribute, Node } from "./problem.ts";
import type { Able, Candidate, Protected, ReleaseDecision, ReleasedRow, Strictness } from "./rule.ts";
import { bestNode } from "./search.ts";
import { limitOf, requireK } from "./strictness.ts";

/**
 * Protects linked profiles: one record per athlete. A neighbour who noted all five marks knows the whole record, so at
 * least k athletes must share the whole record: the tests done, every reported mark, and the quasi-identifiers. Marks
 * are reported in two or three parts or not at all, and at least two tests are reported. Profiles of hidden athletes
 * who would be left alone in one of their marks are withheld.
 * @throws Refusal `bad-input` when k is too small.
 */
export function protectProfiles(candidates: readonly Candidate[], strictness: Strictness): Protected {
  requireK(strictness.k);
  const { able, suppressed } = sortOut(candidates);
  const { kept, held, decisions } = decide(able, strictness);
  return { kind: "profiles", kept, suppressed: [...suppressed, ...countWithheld(held)], decisions, able };
}

/** Decides, and decides again without the athletes who would be left alone, until there are none. */
function decide(
  able: readonly Able[],
  strictness: Strictness,
): Pick<Protected, "kept" | "decisions"> & { readonly held: readonly Withheld[] } {
  const people = [...Map.groupBy(able, ({ athlete }) => athlete).values()].map(profileOf);
  const columns = columnsOf(able, people, strictness.k);
  const attributes = attributesOf(columns, people);
  const demands = { ...strictness, limit: limitOf(people.length, strictness.suppression), tests: leastTests };
  const node = people.length === 0 ? null : bestNode(people.length, attributes, demands);
  const told = node === null ? null : toldBy(node, columns);
  const kept = node === null || told === null ? [] : keep(people, node, told);
  const alone = leftAlone(kept, able);
  if (alone.size > 0) {
    const rest = decide(
      able.filter(({ athlete }) => !alone.has(athlete)),
      strictness,
    );
    return { ...rest, held: [...rest.held, ...asLeftAlone(able, alone)] };
  }
  return {
    kept,
    held: able.flatMap((mark) => heldOf(mark, people, node, told)),
    decisions: people.length === 0 ? [] : [decisionOf(columns, people.length, kept.length, node, told)],
  };
}

/** All marks of one athlete; the quasi-identifiers are those of any of them. */
interface Profile {
  readonly of: Able;
  readonly marks: readonly Able[];
}

function profileOf(marks: readonly Able[]): Profile {
  const [of] = marks as [Able];
  return { of, marks };
}

/** A test and variant with the codings of its marks; the last is not to report them. */
interface Column {
  readonly test: TestCode;
  readonly variant: string;
  readonly values: readonly (number | null)[];
  readonly codings: readonly (Coding | null)[];
}

/** Fewest tests in a profile. A profile that links nothing is none: unlinked marks say more. */
const leastTests = 2;
/** Two or three parts: more can't be shared by k athletes in several tests at once. */
const mostParts = 3;

function columnsOf(able: readonly Able[], people: readonly Profile[], k: number): Column[] {
  return tablesOf(able).map(({ test, variant, rows }) => {
    const codings = codingsOf(
      rows.map(({ value }) => value),
      [ladders[test].profileStep],
      mostParts,
    );
    const values = people.map(({ marks }) => {
      const mark = marks.find((one) => one.test === test && one.variant === variant);
      return mark === undefined ? null : mark.value;
    });
    // Fewer than two parts of k can't be reported, whatever else is.
    return { test, variant, values, codings: rows.length < 2 * k ? [null] : [...codings, null] };
  });
}

function attributesOf(columns: readonly Column[], people: readonly Profile[]): Attribute[] {
  const weight = Math.floor(marksWeight / Math.max(1, columns.length));
  const persons = people.map(({ of }) => of);
  return [
    ...columns.map(({ test, values, codings }) => markAttribute(test, values, codings, weight)),
    ...generalisable.map((name) => quasiAttribute(name, persons)),
  ];
}

interface Told {
  readonly columns: readonly (Column & { readonly coding: Coding | null })[];
  readonly levels: Levels;
}

function toldBy(node: Node, columns: readonly Column[]): Told {
  return {
    columns: columns.map((column, at) => ({
      ...column,
      coding: column.codings[node.chosen[at] ?? 0] ?? null,
    })),
    levels: levelsOf(node.chosen.slice(columns.length)),
  };
}

function keep(people: readonly Profile[], { suppressed }: Node, { columns, levels }: Told): ReleasedRow[] {
  return people.flatMap(({ of }, at) => {
    if (suppressed[at] !== false) return [];
    const marks = columns.flatMap(({ test, variant, values, coding }) => {
      const value = values[at] ?? null;
      return value === null || coding === null ? [] : [{ test, variant, ...intervalOf(value, coding) }];
    });
    // An athlete without any reported test would leave an empty row.
    return marks.length === 0 ? [] : { athlete: of.athlete, quasi: toldQuasi(of, levels), marks };
  });
}

/** Returns the reason to withhold a mark that could be released, or nothing when it is released. */
function heldOf(
  mark: Able,
  people: readonly Profile[],
  node: Node | null,
  told: Told | null,
): Withheld | readonly Withheld[] {
  if (node === null || told === null) return { ...mark, reason: "too-few" };
  const isOut = node.suppressed[people.findIndex(({ of }) => of.athlete === mark.athlete)] === true;
  if (isOut) return { ...mark, reason: "rare" };
  const column = told.columns.find(({ test, variant }) => test === mark.test && variant === mark.variant);
  return column?.coding === null ? { ...mark, reason: "untold" } : [];
}

function decisionOf(
  columns: readonly Column[],
  able: number,
  kept: number,
  node: Node | null,
  told: Told | null,
): ReleaseDecision {
  const codings = (told?.columns ?? columns.map((column) => ({ ...column, coding: null }))).map(
    ({ test, variant, coding }) => ({ test, variant, coding }),
  );
  return {
    ...{ codings, able, kept, levels: told?.levels ?? null },
    loss: node === null ? 1 : node.loss / (able * 1_000_000),
  };
}
