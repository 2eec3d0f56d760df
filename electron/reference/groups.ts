import type { ToldCategory } from "../domain/reference/bundle.ts";
import { capOf, countedUnder, type GroupSize, wholeWeight } from "../domain/reference-table/cap.ts";
import { countsAs } from "../domain/reference-table/counts-as.ts";
import type { HallInTest } from "../domain/reference-table/differing-halls.ts";
import { placesInAll, riditsOf } from "../domain/reference-table/ridits.ts";
import { isToldAmong } from "../domain/reference-table/rows.ts";
import {
  type everybody,
  type GroupOfMarks,
  type Percentile,
  percentilesTold,
} from "../domain/reference-table/table.ts";
import { mayBeTold, withoutNarrowRests } from "../domain/reference-table/told-groups.ts";
import type { TestCode } from "../domain/tests/registry.ts";
import { allOf, type Database } from "./database.ts";
import { steps } from "./steps.ts";

/** What a merge finds: the groups that may be told, and every hall in every test against all others. */
export interface Found {
  readonly groups: readonly GroupOfMarks[];
  readonly halls: readonly HallInTest<number>[];
  /** The test that has this number in `halls`. */
  readonly testOf: (number: number) => TestCode | undefined;
}

/**
 * Works out the groups of a reference table from the table `mark` (1-tables.sql), which is filled, and the halls' own
 * standing. The engine adds up; what the rules decide, the domain decides in between.
 */
export async function groupsOf(database: Database): Promise<Found> {
  await database.run(steps.groups);
  const sizes = await sizesIn(database);
  await database.add(
    "cap",
    [...sizes.values()].map((size) => [size.grp, 2 * capOf(sizeOf(size))]),
  );
  await database.run(steps.weigh);
  const [told, percentiles] = await Promise.all([
    placesIn(database),
    percentilesIn(database, percentilesTold),
  ]);
  await database.run(steps.standing);
  const [between, halls] = await Promise.all([
    spreadIn(database),
    allOf(database.rows<HallInTest<number>>(steps.compare)),
  ]);
  const groups = [...told].flatMap(([grp, { different, variance }]): GroupOfMarks[] => {
    const size = sizes.get(grp);
    if (size === undefined) return [];
    const { halls } = size;
    const marks = countedIn(size);
    if (!mayBeTold({ marks, halls, different })) return [];
    const spread = { marks, halls, variance, betweenHalls: (between.get(grp) ?? 0) / marks ** 2 };
    return [
      { ...nameOf(size), marks, halls, countsAs: countsAs(spread), percentiles: percentiles.get(grp) ?? [] },
    ];
  });
  return {
    groups: withoutNarrowRests(groups).map((group) => {
      const isTold = ({ percentile }: Percentile) => isToldAmong(percentile, group.marks);
      return { ...group, percentiles: group.percentiles.filter(isTold) };
    }),
    halls,
    testOf: (number) => sizes.get(number)?.test,
  };
}

/** A row of 3-sizes.sql. */
export interface SizeRow {
  readonly grp: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly category: ToldCategory | typeof everybody;
  readonly age_band: string;
  readonly first_quarter: string;
  readonly last_quarter: string;
  readonly total: number;
  readonly counted: number;
  readonly halls: number;
  readonly middle: number;
  readonly largest: number;
  readonly second: number;
}

export async function sizesIn(database: Database): Promise<Map<number, SizeRow>> {
  const sizes = new Map<number, SizeRow>();
  for (const row of await allOf(database.rows<SizeRow>(steps.sizes))) sizes.set(row.grp, row);
  return sizes;
}

function nameOf({ test, variant, fingerprint, category, age_band, first_quarter, last_quarter }: SizeRow) {
  return { test, variant, fingerprint, category, ageBand: age_band, from: first_quarter, to: last_quarter };
}

function sizeOf({ middle, counted, largest, second }: SizeRow): GroupSize {
  return { middle, total: counted, largest, second };
}

function countedIn(row: SizeRow): number {
  return countedUnder(capOf(sizeOf(row)), sizeOf(row));
}

/** What a group's marks come to. */
interface ToldMarks {
  readonly different: number;
  readonly variance: number;
}

interface WeighedRow {
  readonly grp: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly weight: number;
}

const weighed = `SELECT grp, NULLIF(low, -1) AS low, NULLIF(high, 2147483647) AS high, weight
  FROM weighed ORDER BY grp, weighed.low, weighed.high`;

/** Rows that wait in memory to be added together. */
const mostWaiting = 50_000;

/** Gives every interval its place among its group's, some groups in memory at a time. */
async function placesIn(database: Database): Promise<Map<number, ToldMarks>> {
  const told = new Map<number, ToldMarks>();
  const moments: number[][] = [];
  const waiting: number[][] = [];
  for await (const rows of byGroup(database.rows<WeighedRow>(weighed))) {
    const [{ grp } = { grp: 0 }] = rows;
    const { places, mean, variance } = riditsOf(rows);
    const weight = rows.reduce((sum, row) => sum + row.weight, 0);
    told.set(grp, { different: rows.length, variance });
    moments.push([grp, weight / wholeWeight, mean, variance]);
    rows.forEach(({ low, high }, index) => {
      waiting.push([grp, low ?? -1, high ?? 2147483647, places[index] ?? 0]);
    });
    if (waiting.length > mostWaiting) await database.add("place", waiting.splice(0));
  }
  await database.add("place", waiting);
  await database.add("moments", moments);
  return told;
}

async function* byGroup(found: AsyncIterable<WeighedRow[]>): AsyncGenerator<WeighedRow[]> {
  let group: WeighedRow[] = [];
  for await (const rows of found) {
    for (const row of rows) {
      if (group.length > 0 && group[0]?.grp !== row.grp) {
        yield group;
        group = [];
      }
      group.push(row);
    }
  }
  if (group.length > 0) yield group;
}

interface SpreadRow {
  readonly grp: number;
  readonly weight: number;
  readonly squares: number;
}

/** Returns Σ (marks that count · (mean place − ½))² over each group's halls. */
async function spreadIn(database: Database): Promise<Map<number, number>> {
  const between = new Map<number, number>();
  for (const { grp, weight, squares } of await allOf(database.rows<SpreadRow>(steps.spread))) {
    const each = (weight / wholeWeight / placesInAll) ** 2;
    between.set(grp, (between.get(grp) ?? 0) + each * squares);
  }
  return between;
}

interface PercentileRow {
  readonly grp: number;
  readonly percentile: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** Returns the bounds of these percentiles, by group; those of at least 20 marks that count have them. */
export async function percentilesIn(
  database: Database,
  wanted: readonly number[],
): Promise<Map<number, Percentile[]>> {
  await database.add(
    "percentile",
    wanted.map((p) => [p]),
  );
  const found = new Map<number, Percentile[]>();
  for (const row of await allOf(database.rows<PercentileRow>(steps.percentiles))) {
    const { grp, percentile, low, high } = row;
    const those = found.get(grp) ?? [];
    found.set(grp, those);
    those.push({ percentile, low, high });
  }
  return found;
}
