import { fits, fitsQuasi, hasAll, type Sighting, testAndVariant } from "./neighbour.ts";
import type { PublishedRow } from "./publish.ts";

/** The result of removing everybody whose marks were noted. */
export interface Subtraction {
  /** Number of marks of hidden athletes who share: this neighbour's target. */
  readonly marks: number;
  /** Number of those with a single interval left. */
  readonly found: number;
  /** Number of athletes they belong to. */
  readonly people: number;
}

/**
 * Plays a neighbour who noted every mark except those of hidden athletes, and knows who shares, who of them is hidden
 * and which tests those did. They remove the rows of everybody seen, and look which remaining rows could be a hidden
 * athlete's. If all of these report the same interval, it is found. It does not know how rows were made.
 */
export function playSubtraction(
  rows: readonly PublishedRow[],
  sightings: readonly Sighting[],
  linked: boolean,
): Subtraction {
  const told = new Set(rows.flatMap(({ marks }) => marks.map(testAndVariant)));
  const whole = (row: PublishedRow, sighting: Sighting) => !linked || hasAll(row, sighting, told);
  const left = leftOf(rows, (row) => {
    const seen = sightings.filter(
      (sighting) => !sighting.hidden && fits(row, sighting) && whole(row, sighting),
    );
    return seen.length;
  });
  const tried = sightings.filter(({ hidden }) => hidden);
  const found = tried.map((sighting) => {
    const own = left.filter((row) => couldBe(row, sighting) && whole(row, sighting));
    return sighting.marks.filter((mark) => intervalsIn(own, testAndVariant(mark)).size === 1).length;
  });
  return {
    marks: tried.reduce((sum, { marks }) => sum + marks.length, 0),
    found: found.reduce((sum, marks) => sum + marks, 0),
    people: found.filter((marks) => marks > 0).length,
  };
}

/** Returns one row of each shape that the file has more often than it was seen. */
function leftOf(rows: readonly PublishedRow[], seen: (row: PublishedRow) => number): PublishedRow[] {
  const shapes = Map.groupBy(rows, ({ quasi, marks }) =>
    JSON.stringify([quasi.quarter, quasi.category, quasi.ageBand, quasi.leagueSize, marks]),
  );
  return [...shapes.values()].flatMap((alike) => alike.slice(0, 1).filter((row) => alike.length > seen(row)));
}

/** True if a row could be an athlete's, by what this neighbour knows: of the marks only which tests they did. */
function couldBe(row: PublishedRow, { quasi, marks }: Sighting): boolean {
  const own = new Set(marks.map(testAndVariant));
  return fitsQuasi(row.quasi, quasi) && row.marks.every((mark) => own.has(testAndVariant(mark)));
}

function intervalsIn(rows: readonly PublishedRow[], place: string): Set<string> {
  const marks = rows.flatMap((row) => row.marks.filter((mark) => testAndVariant(mark) === place));
  return new Set(marks.map(({ low, high }) => JSON.stringify([low, high])));
}
