import { strFromU8, unzipSync } from "fflate";
import jstat from "jstat";

/**
 * An independent counter of what a reference table should tell. It opens bundles by itself, puts every mark of a group in
 * a list, fills the halls up to the cap as water fills vessels, walks along sorted lists, and spreads marks over their
 * intervals in the plainest way. It shares no line with the program and knows no SQL.
 */
export interface PlainMark {
  readonly hall: string;
  readonly test: string;
  readonly variant: string;
  readonly rules: string;
  readonly category: string;
  readonly age: string;
  readonly quarter: string;
  /** In the test's unit; infinite where open. */
  readonly low: number;
  readonly high: number;
}

/** A group as it should be told; percentiles as text: `5:12,13`, an open bound empty. */
export interface PlainGroup {
  readonly name: string;
  readonly marks: number;
  readonly halls: number;
  readonly different: number;
  readonly countsAs: number;
  readonly from: string;
  readonly to: string;
  readonly percentiles: readonly string[];
}

/** Every mark of a bundle of single marks. */
export function* marksIn(zip: Uint8Array, hall: string): Generator<PlainMark> {
  const files = unzipSync(zip);
  type Told = { test: string; variants: { variant: string; fingerprint: string }[] };
  const { tests } = JSON.parse(strFromU8(files["protocols.json"] ?? new Uint8Array())) as { tests: Told[] };
  const lines = strFromU8(files["marks.csv"] ?? new Uint8Array()).split("\r\n");
  for (const line of lines.slice(1, -1)) {
    const [, test = "", variant = "", age = "", category = "", , quarter = "", low = "", high = ""] =
      line.split(",");
    const told = tests.find((each) => each.test === test)?.variants;
    const rules = told?.find((each) => each.variant === variant)?.fingerprint ?? "";
    const bounds = {
      low: low === "" ? -Infinity : Number(low),
      high: high === "" ? Infinity : Number(high),
    };
    yield { hall, test, variant, rules, category, age, quarter, ...bounds };
  }
}

/** Every group that may be told. */
export function countGroups(marks: Iterable<PlainMark>): PlainGroup[] {
  const lists = new Map<string, PlainMark[]>();
  for (const mark of marks) {
    for (const category of [mark.category, "all"]) {
      for (const age of [mark.age, "all"]) {
        const name = JSON.stringify([mark.test, mark.variant, mark.rules, category, age]);
        const list = lists.get(name) ?? [];
        lists.set(name, list);
        list.push(mark);
      }
    }
  }
  const counted = [...lists].map(([name, list]) => countGroup(name, list));
  const large = counted.filter(({ marks: n, halls, different }) => n >= 20 && halls >= 3 && different >= 3);
  return withoutRests(large);
}

/** What halls count: all are filled to the same height, as high as a third of all goes and no
 * higher than three middle ones. Weights are whole millionths. */
function weightsOf(list: readonly PlainMark[]): { weights: Map<string, number>; marks: number } {
  const sizes = new Map<string, number>();
  for (const { hall } of list) sizes.set(hall, (sizes.get(hall) ?? 0) + 1);
  const rising = [...sizes.values()].sort((a, b) => a - b);
  // As high as three of the vessels in the middle at most.
  const brim = 3 * (rising[Math.floor((rising.length - 1) / 2)] ?? 0);
  const falling = rising.map((size) => Math.min(size, brim)).reverse();
  let height = brim;
  for (let cut = 0; cut < 3; cut += 1) {
    const rest = falling.slice(cut).reduce((sum, size) => sum + size, 0);
    const third = cut === 0 ? rest / 3 : rest / (3 - cut);
    if ((falling[cut] ?? 0) <= third) {
      if (cut > 0) height = third;
      break;
    }
    if (cut === 2) height = 0;
  }
  const weights = new Map(
    [...sizes].map(([hall, size]) => [hall, size <= height ? 1e6 : Math.floor((1e6 * height) / size)]),
  );
  const filled = falling.reduce((sum, size) => sum + Math.min(size, height), 0);
  return { weights, marks: Math.floor(filled) };
}

function countGroup(name: string, list: readonly PlainMark[]): PlainGroup {
  const { weights, marks } = weightsOf(list);
  const weighed = list.map((mark) => ({ ...mark, weight: weights.get(mark.hall) ?? 0 }));
  const counting = weighed.filter(({ weight }) => weight > 0);
  const total = counting.reduce((sum, { weight }) => sum + weight, 0);
  const quarters = list.map(({ quarter }) => quarter).sort();
  const lows = counting.map(({ low, weight }) => ({ at: low, weight })).sort((a, b) => a.at - b.at);
  const highs = counting.map(({ high, weight }) => ({ at: high, weight })).sort((a, b) => a.at - b.at);
  const percentiles = [];
  for (let p = 5; p <= 95; p += 5) {
    if (Math.min(p, 100 - p) * marks < 500) continue;
    const place = ((total - 1e6) * p) / 100;
    percentiles.push(`${p}:${bound(covering(lows, place))},${bound(justBefore(highs, place + 1e6))}`);
  }
  return {
    ...{ name, marks, halls: weights.size, percentiles },
    different: new Set(counting.map(({ low, high }) => `${low} ${high}`)).size,
    countsAs: marks < 1 ? 0 : independent(counting, marks),
    ...{ from: quarters[0] ?? "", to: quarters.at(-1) ?? "" },
  };
}

interface Weighed {
  readonly at: number;
  readonly weight: number;
}

function covering(sorted: readonly Weighed[], place: number): number {
  let reached = 0;
  for (const { at, weight } of sorted) {
    reached += weight;
    if (reached > place) return at;
  }
  return Number.NaN;
}

function justBefore(sorted: readonly Weighed[], place: number): number {
  let reached = 0;
  for (const { at, weight } of sorted) {
    reached += weight;
    if (reached >= place) return at;
  }
  return Number.NaN;
}

function bound(value: number): string {
  return Number.isFinite(value) ? String(value) : "";
}

/** As many independent marks as would say as much about a share. */
function independent(marks: readonly (PlainMark & { weight: number })[], counted: number): number {
  const cuts = [...new Set(marks.flatMap(({ low, high }) => [low, high]))].filter(Number.isFinite);
  cuts.sort((a, b) => a - b);
  const edges = [-Infinity, ...cuts, Infinity];
  const alike = Map.groupBy(marks, ({ low, high }) => `${low} ${high}`);
  const spans = [...alike.values()].map((those) => ({
    from: edges.indexOf(those[0]?.low ?? 0),
    to: edges.indexOf(those[0]?.high ?? 0),
    weight: those.reduce((sum, { weight }) => sum + weight, 0),
  }));
  const total = spans.reduce((sum, { weight }) => sum + weight, 0);
  let shares = edges.slice(1).map((_edge, _index, all) => 1 / all.length);
  for (let step = 0; step < 100; step += 1) {
    const next = shares.map(() => 0);
    for (const { from, to, weight } of spans) {
      const there = shares.slice(from, to).reduce((sum, share) => sum + share, 0);
      for (let part = from; part < to; part += 1) {
        next[part] = (next[part] ?? 0) + (weight * (shares[part] ?? 0)) / there / total;
      }
    }
    shares = next;
  }
  const below = [0];
  for (const share of shares) below.push((below.at(-1) ?? 0) + share);
  const placeOf = ({ low, high }: PlainMark) =>
    Math.round(5000 * ((below[edges.indexOf(low)] ?? 0) + (below[edges.indexOf(high)] ?? 0))) / 10_000;
  const placed = marks.map((mark) => ({ hall: mark.hall, weight: mark.weight, place: placeOf(mark) }));
  const mean = placed.reduce((sum, { weight, place }) => sum + weight * place, 0) / total;
  const variance = placed.reduce((sum, { weight, place }) => sum + weight * (place - mean) ** 2, 0) / total;
  const halls = [...Map.groupBy(placed, ({ hall }) => hall).values()].map((those) => {
    const weight = those.reduce((sum, each) => sum + each.weight, 0);
    return { weight, place: those.reduce((sum, { place }) => sum + place, 0) / those.length };
  });
  const n = halls.length;
  if (n < 2) return 1;
  const between = halls.reduce(
    (sum, { weight, place }) => sum + (weight / 1e6 / counted) ** 2 * (place - 0.5) ** 2,
    0,
  );
  const effect = variance === 0 ? 1 : Math.max(1, ((n / (n - 1)) * between * counted) / variance);
  const wider = Math.max(1, (jstat.studentt.inv(0.975, n - 1) / 1.96) ** 2);
  return Math.min(counted, Math.max(1, Math.floor(counted / (effect * wider))));
}

/** What is left of a margin besides its told parts, for each margin that has told parts. */
export function restsOf(
  groups: readonly Pick<PlainGroup, "name" | "marks">[],
): { rest: number; parts: string[] }[] {
  const named = groups.map(({ name, marks }) => ({ name, marks, told: JSON.parse(name) as string[] }));
  return named.flatMap(({ marks, told: [test, variant, rules, category, age] }) => {
    const sameRules = named.filter(
      ({ told }) => told[0] === test && told[1] === variant && told[2] === rules,
    );
    const byAge = sameRules.filter(({ told }) => age === "all" && told[3] === category && told[4] !== "all");
    const byCategory = sameRules.filter(
      ({ told }) => category === "all" && told[4] === age && told[3] !== "all",
    );
    return [byAge, byCategory]
      .filter((parts) => parts.length > 0)
      .map((parts) => {
        const falling = parts.toSorted((a, b) => a.marks - b.marks || (a.name < b.name ? -1 : 1));
        const rest = marks - parts.reduce((sum, part) => sum + part.marks, 0);
        return { rest, parts: falling.map(({ name }) => name) };
      });
  });
}

/** Takes the smallest part away wherever one to four are left of a margin. */
function withoutRests(groups: readonly PlainGroup[]): PlainGroup[] {
  let left = [...groups];
  for (;;) {
    const found = restsOf(left).find(({ rest }) => rest >= 1 && rest <= 4);
    if (found === undefined) return left;
    left = left.filter(({ name }) => name !== found.parts[0]);
  }
}

/** The groups that a table tells, by the text of its files alone. */
export function groupsTold(table: Uint8Array): PlainGroup[] {
  const files = unzipSync(table);
  const rows = (name: string) => rowsIn(strFromU8(files[name] ?? new Uint8Array()));
  const percentiles = Map.groupBy(rows("percentiles.csv"), ([group = ""]) => group);
  return rows("groups.csv").map((row) => {
    const [group = "", test, variant, rules, category, age, marks, halls, countsAs, from = "", to = ""] = row;
    return {
      name: JSON.stringify([test, variant, rules, category, age]),
      ...{ marks: Number(marks), halls: Number(halls), countsAs: Number(countsAs), different: 3, from, to },
      percentiles: (percentiles.get(group) ?? []).map(([, p, low, high]) => `${p}:${low},${high}`),
    };
  });
}

/** Rows of a CSV file without its header. */
function rowsIn(text: string): string[][] {
  return text
    .split("\r\n")
    .slice(1, -1)
    .map((line) =>
      [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
        ([, quoted, bare = ""]) => quoted?.replaceAll('""', '"') ?? bare,
      ),
    );
}

/**
 * What is different between a table and a count, as text; empty when they are equal. A group counts as one independent
 * mark more or less where a sum of fractions, taken in another order, falls on the other side of a whole number.
 */
export function differences(told: readonly PlainGroup[], counted: readonly PlainGroup[]): string[] {
  const byName = new Map(counted.map((group) => [group.name, group]));
  const stray = told.filter(({ name }) => !byName.has(name)).map(({ name }) => `only told: ${name}`);
  const names = new Set(told.map(({ name }) => name));
  const missing = counted.filter(({ name }) => !names.has(name)).map(({ name }) => `only counted: ${name}`);
  const unlike = told.flatMap((group) => {
    const other = byName.get(group.name);
    if (other === undefined) return [];
    const [one, two] = [group, other].map((each) =>
      JSON.stringify({ ...each, countsAs: 0, different: 0 }, keys),
    );
    if (one !== two) return [`${one} told, ${two} counted`];
    const isNear = Math.abs(group.countsAs - other.countsAs) <= 1;
    return isNear ? [] : [`${group.name} counts as ${group.countsAs}, counted ${other.countsAs}`];
  });
  return [...stray, ...missing, ...unlike];
}

const keys = ["name", "marks", "halls", "from", "to", "percentiles"];
