import type { TestCode } from "../tests/registry.ts";
import { notTold, type ToldQuasi } from "./hierarchy.ts";
import type { PublishedRow } from "./publish.ts";
import type { Able } from "./rule.ts";

/** Somebody as a neighbour in the hall has noted them: by bib, with every mark and with what can be seen or asked. */
export interface Sighting {
  /** Stands for the bib. */
  readonly who: number;
  /** Whether the board hides them, so that somebody who only looks there has noted no mark of theirs. */
  readonly hidden: boolean;
  readonly quasi: ToldQuasi;
  readonly marks: readonly { readonly test: TestCode; readonly variant: string; readonly value: number }[];
}

/** What came of trying to match rows to bibs. */
export interface Attack {
  /** Bibs that were tried: everybody who agreed to share and has a mark. */
  readonly bibs: number;
  /** Bibs of which a row is found for certain: one row fits, or only one bib fits it. */
  readonly certain: number;
  /** Bibs whose best guess is likelier to be right than one in k. */
  readonly exposed: number;
  /** The likeliest guess, from 0 to 1. */
  readonly largest: number;
  /** The share of bibs matched rightly when the neighbour guesses for everybody, on average. */
  readonly expected: number;
}

/** What a neighbour could have noted: the most there is to know, of everybody who could be in the bundle. */
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

/** The same marks as they would leave if nothing were done: what the attack finds "before". */
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
 * Plays the neighbour against rows as they stand in the file: for each bib, which rows fit, and for each row, which bibs.
 * A row fits when nothing in it speaks against the bib. The guess at a bib is right with 1 / (rows that fit); a row is
 * the bib's with 1 / (bibs that fit); the better of the two counts, over all rows. It knows nothing of how rows were made.
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

/** Rows of one test are guessed among each other: a bib's leap says nothing about which of the planks is its own. */
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

/** Test and variant of a mark, as text. */
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

/** A profile tells every mark of the tests that profiles tell: one that lacks a mark is of somebody without it. */
export function hasAll(
  { marks }: Pick<PublishedRow, "marks">,
  sighting: Sighting,
  told: ReadonlySet<string>,
): boolean {
  const own = new Set(marks.map(testAndVariant));
  return sighting.marks.every((seen) => !told.has(testAndVariant(seen)) || own.has(testAndVariant(seen)));
}

/** Everything that a row says. */
function shapeOf({ quasi, marks }: PublishedRow): string {
  return JSON.stringify([quasi.quarter, quasi.category, quasi.ageBand, quasi.leagueSize, marks]);
}

/** Whether nothing that a row tells beside the marks speaks against somebody. */
export function fitsQuasi(told: ToldQuasi, seen: ToldQuasi): boolean {
  const same = (name: keyof ToldQuasi) => told[name] === notTold || seen[name].startsWith(told[name]);
  return same("quarter") && same("category") && same("ageBand") && same("leagueSize");
}

/** Whether nothing in a row speaks against somebody, the marks least of all. */
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
