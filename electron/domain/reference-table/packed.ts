import type { BundleTest } from "../reference/bundle.ts";
import type { GroupOfMarks, ReferenceTable } from "./table.ts";

/** A table as it is kept: what is always read together is one value, so that keeping it takes a moment. */
export interface PackedTable extends Omit<ReferenceTable, "bundles" | "groups"> {
  /** The hashes, 32 bytes each, sorted. */
  readonly bundles: Uint8Array;
  readonly rules: readonly PackedRules[];
}

/** What a table says of one test and variant by one set of rules, in all its groups together. */
export interface TableTest extends BundleTest {
  /** Results of its largest group, and halls of the group that has the most. */
  readonly marks: number;
  readonly halls: number;
  /** Number of its groups. */
  readonly groups: number;
  readonly from: string;
  readonly to: string;
}

/** The same with the groups themselves, as JSON. */
interface PackedRules extends TableTest {
  readonly told: string;
}

/** A group of one set of rules, as far as a place in it goes. */
export type ToldGroup = Pick<
  GroupOfMarks,
  "category" | "ageBand" | "marks" | "halls" | "countsAs" | "percentiles"
>;

const hashBytes = 32;

export function packTable({ groups, ...table }: ReferenceTable): PackedTable {
  const bundles = new Uint8Array(table.bundles.length * hashBytes);
  for (const [index, hash] of table.bundles.toSorted().entries())
    bundles.set(bytesOf(hash), index * hashBytes);
  const rules = [...Map.groupBy(groups, ({ fingerprint }) => fingerprint).values()].flatMap(packedRules);
  return { ...table, bundles, rules };
}

function packedRules(groups: readonly GroupOfMarks[]): PackedRules[] {
  const [first] = groups;
  if (first === undefined) return [];
  const { test, variant, fingerprint } = first;
  const [from = "", to = from] = spanOf(groups);
  const counts = { marks: most(groups, "marks"), halls: most(groups, "halls"), groups: groups.length };
  return [{ test, variant, fingerprint, ...counts, from, to, told: JSON.stringify(groups.map(packedGroup)) }];
}

type PackedGroup = [
  category: GroupOfMarks["category"],
  ageBand: string,
  marks: number,
  halls: number,
  countsAs: number,
  percentiles: [percentile: number, low: number | null, high: number | null][],
];

function packedGroup({ category, ageBand, marks, halls, countsAs, percentiles }: GroupOfMarks): PackedGroup {
  const rows = percentiles.map((each): PackedGroup[5][number] => [each.percentile, each.low, each.high]);
  return [category, ageBand, marks, halls, countsAs, rows];
}

/** Returns the groups that were packed together. */
export function unpackGroups(told: string): ToldGroup[] {
  return (JSON.parse(told) as PackedGroup[]).map(([category, ageBand, marks, halls, countsAs, rows]) => {
    const percentiles = rows.map(([percentile, low, high]) => ({ percentile, low, high }));
    return { category, ageBand, marks, halls, countsAs, percentiles };
  });
}

/** Returns the number of bundles in a table. */
export function bundlesIn({ bundles }: Pick<PackedTable, "bundles">): number {
  return bundles.length / hashBytes;
}

/** True if a table has a bundle with that content hash (hexadecimal digits) in it. */
export function holdsBundle({ bundles }: Pick<PackedTable, "bundles">, contentSha256: string): boolean {
  const wanted = bytesOf(contentSha256);
  let [from, to] = [0, bundlesIn({ bundles })];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    const order = orderOf(wanted, bundles.subarray(middle * hashBytes, (middle + 1) * hashBytes));
    if (order === 0) return true;
    if (order < 0) to = middle;
    else from = middle + 1;
  }
  return false;
}

function bytesOf(hex: string): Uint8Array {
  return Uint8Array.from({ length: hashBytes }, (_none, at) =>
    Number.parseInt(hex.slice(2 * at, 2 * at + 2), 16),
  );
}

/** Returns the difference of the first bytes that differ; 0 for equal ones. */
function orderOf(one: Uint8Array, other: Uint8Array): number {
  const at = one.findIndex((byte, index) => byte !== other[index]);
  return (one[at] ?? 0) - (other[at] ?? 0);
}

function most(groups: readonly Pick<GroupOfMarks, "marks" | "halls">[], of: "marks" | "halls"): number {
  return groups.reduce((found, group) => Math.max(found, group[of]), 0);
}

/** Returns the first and the last quarter, or year, of all. */
export function spanOf(spans: readonly Pick<GroupOfMarks, "from" | "to">[]): string[] {
  const first = spans.map(({ from }) => from).sort()[0];
  const last = spans
    .map(({ to }) => to)
    .sort()
    .at(-1);
  return [first, last].filter((each) => each !== undefined);
}
