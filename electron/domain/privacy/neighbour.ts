import type { TestCode } from "../tests/registry.ts";
import { notTold, type ToldQuasi } from "./hierarchy.ts";
import type { PublishedRow } from "./publish.ts";
import type { Able } from "./rule.ts";

/** An athlete as a neighbour in the hall noted them: by bib, with every mark and whatever can be seen or asked. */
export interface Sighting {
  /** The athlete's id, in place of the bib. */
  readonly who: number;
  /** True if the big screen hides them, so that somebody who only looks there has noted no mark of theirs. */
  readonly hidden: boolean;
  readonly quasi: ToldQuasi;
  readonly marks: readonly { readonly test: TestCode; readonly variant: string; readonly value: number }[];
}

/** The result of trying to match rows to bibs. */
export interface Attack {
  /** Number of bibs tried: everybody who agreed to share and has a mark. */
  readonly bibs: number;
  /** Number of bibs with a row found for certain: one row fits, or only one bib fits it. */
  readonly certain: number;
  /** Number of bibs whose best guess is likelier to be right than one in k. */
  readonly exposed: number;
  /** The likeliest guess, from 0 to 1. */
  readonly largest: number;
  /** Expected share of bibs matched rightly when the neighbour guesses for everybody. */
  readonly expected: number;
}

/** Returns all that a neighbour could have noted, of everybody who could be in the bundle. */
export function sightingsOf(able: readonly Able[]): Sighting[] {
  return [...Map.groupBy(able, ({ athlete }) => athlete)].flatMap(([who, marks]) =>
    marks.slice(0, 1).map(({ quarter, category, ageBand, leagueSize, hidden }) => ({
      who,
      hidden: hidden === true,
      quasi: { quarter, category, ageBand, leagueSize },
      marks: marks.map(({ test, variant, value }) => ({ test, variant, value })),
    })),
  );
}

/** Returns the same marks as rows without any protection, for the attack "before". */
export function unprotectedRows(able: readonly Able[], linked: boolean): PublishedRow[] {
  const rows = sightingsOf(able).map(({ who, quasi, marks }) => ({
    id: String(who),
    quasi,
    marks: marks.map(({ test, variant, value }) => ({ test, variant, low: value, high: value + 1 })),
  }));
  return linked
    ? rows
    : rows.flatMap(({ id, quasi, marks }) => marks.map((mark) => ({ id, quasi, marks: [mark] })));
}

/**
 * Plays the neighbour against the rows of a file: for each bib, which rows fit, and for each row, which bibs. A row
 * fits when nothing in it contradicts the bib. The guess at a bib is right with 1 / (rows that fit); a row is the bib's
 * with 1 / (bibs that fit); the better of the two counts, over all rows. It does not know how rows were made.
 */
export function playNeighbour(
  rows: readonly PublishedRow[],
  sightings: readonly Sighting[],
  { k, linked }: { readonly k: number; readonly linked: boolean },
): Attack {
  const shapes = [...Map.groupBy(rows, shapeOf).values()].flatMap((alike) =>
    alike.slice(0, 1).map((row) => ({ ...row, count: alike.length, table: linked ? "" : tableOf(row) })),
  );
  const told = new Set(rows.flatMap((row) => row.marks.map(testAndVariant)));
  const fitting = sightings.map((sighting) =>
    shapes.map((shape) => fits(shape, sighting) && (!linked || hasAll(shape, sighting, told))),
  );
  const bibsOf = shapes.map((_shape, at) => fitting.filter((fit) => fit[at] === true).length);
  const chances = fitting.map((fit) => chanceOf(fit, shapes, bibsOf));
  return {
    bibs: sightings.length,
    certain: chances.filter((chance) => chance >= 1).length,
    exposed: chances.filter((chance) => chance > 1 / k + 1e-9).length,
    largest: chances.reduce((most, chance) => Math.max(most, chance), 0),
    expected: chances.reduce((sum, chance) => sum + chance, 0) / Math.max(1, sightings.length),
  };
}

/**
 * Returns the chance of the best guess. Rows of one test are guessed among each other: a leap says nothing about which
 * plank row is the same bib's.
 */
function chanceOf(
  fit: readonly boolean[],
  shapes: readonly { readonly table: string; readonly count: number }[],
  bibsOf: readonly number[],
): number {
  const fitInTable = new Map<string, number>();
  shapes.forEach(({ table, count }, at) => {
    if (fit[at] === true) fitInTable.set(table, (fitInTable.get(table) ?? 0) + count);
  });
  return shapes.reduce((best, { table }, at) => {
    if (fit[at] !== true) return best;
    return Math.max(best, 1 / (fitInTable.get(table) ?? 1), 1 / (bibsOf[at] ?? 1));
  }, 0);
}

/** Joins a mark's test and variant as text. */
export function testAndVariant({
  test,
  variant,
}: {
  readonly test: TestCode;
  readonly variant: string;
}): string {
  return `${test} ${variant}`;
}

function tableOf({ marks }: PublishedRow): string {
  return marks.map(testAndVariant).join();
}

/** True if a row has every reported mark of an athlete: a profile that lacks one is of somebody without it. */
export function hasAll(
  { marks }: Pick<PublishedRow, "marks">,
  sighting: Sighting,
  told: ReadonlySet<string>,
): boolean {
  const own = new Set(marks.map(testAndVariant));
  return sighting.marks.every((seen) => !told.has(testAndVariant(seen)) || own.has(testAndVariant(seen)));
}

/** Returns everything that a row says, as text. */
function shapeOf({ quasi, marks }: PublishedRow): string {
  return JSON.stringify([quasi.quarter, quasi.category, quasi.ageBand, quasi.leagueSize, marks]);
}

/** True if no reported quasi-identifier contradicts an athlete. */
export function fitsQuasi(told: ToldQuasi, seen: ToldQuasi): boolean {
  const same = (name: keyof ToldQuasi) => told[name] === notTold || seen[name].startsWith(told[name]);
  return same("quarter") && same("category") && same("ageBand") && same("leagueSize");
}

/** True if nothing in a row contradicts an athlete, its marks included. */
export function fits(
  { quasi, marks }: Pick<PublishedRow, "quasi" | "marks">,
  sighting: Pick<Sighting, "quasi" | "marks">,
): boolean {
  if (!fitsQuasi(quasi, sighting.quasi)) return false;
  return marks.every(({ test, variant, low, high }) =>
    sighting.marks.some(
      (seen) =>
        seen.test === test &&
        seen.variant === variant &&
        (low === null || seen.value >= low) &&
        (high === null || seen.value < high),
    ),
  );
}
