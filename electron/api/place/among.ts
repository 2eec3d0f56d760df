import type { AgeBand } from "../../domain/privacy/quasi.ts";
import { bandInWords } from "../../domain/privacy/quasi.ts";
import { type PlaceBand, placeAmong } from "../../domain/statistics/place.ts";
import { placeBetween, widthOfPlace } from "../../domain/statistics/place-between.ts";
import { boundsWithinEnds, endOf, withinEnds } from "../../domain/statistics/place-ends.ts";
import { placeInPercentiles } from "../../domain/statistics/place-in-percentiles.ts";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import type { Group } from "./groups.ts";

/** A mark's place in a reference group; nothing in it identifies any of the others. */
export interface PlaceAmongOthers {
  /**
   * today: athletes who test today. store: every day of this store. imported: a reference from elsewhere. mixed: one
   * without reported categories.
   */
  readonly group: "today" | "store" | "imported" | "mixed";
  /** Name of an imported reference, or of a table's publisher; null for the store's own groups. */
  readonly origin: string | null;
  /** Number of halls behind a group of a table; null for all others. */
  readonly halls: number | null;
  /** The age band of those it was compared with; null for all ages. */
  readonly ages: AgeBand | null;
  /** The end of the test that the mark is stuck at, beyond which it tells no more. */
  readonly end: "floor" | "ceiling" | null;
  /** Number of marks it was compared with. */
  readonly n: number;
  /** Better than about `low` to `high` of a hundred: whole numbers from 0 to 100. */
  readonly low: number;
  readonly high: number;
}

/** A complete mark of a day; `value` in the test's grains. */
export interface MarkToPlace {
  readonly athleteId: Athlete["id"];
  readonly test: TestCode;
  readonly variant: string;
  readonly value: number;
}

/** A mark as it is placed: how far normal variation reaches (grains), and the age band of the athlete. */
export interface OwnMark extends Omit<MarkToPlace, "variant"> {
  readonly reach: number;
  readonly ages: AgeBand | null;
}

/** A place, and the possible width of a place in that group. */
export interface Found {
  readonly place: PlaceAmongOthers;
  readonly width: number;
}

/**
 * Returns the places in a group, and in the part of it that is of the athlete's own age; without the athlete's own marks,
 * since nobody is better than themselves. Marks beyond the end of a test are equal.
 */
export function placesIn(group: Group, { athleteId, test, value, reach, ages }: OwnMark): Found[] {
  const { protocol, figures } = definitionOf(test);
  const [end, own] = [endOf(value, figures.ends), withinEnds(value, figures.ends)];
  const { better, equalWithin } = protocol;
  if ("told" in group) {
    if (group.ages !== null && (ages === null || group.ages !== bandInWords(ages))) return [];
    const band = placeInPercentiles(better, own, group.told, equalWithin, reach);
    const which = { group: group.group, origin: group.origin, halls: group.halls };
    return foundIn({ ...which, ages: group.ages === null ? null : ages, end }, band, () => group.width);
  }
  if ("origin" in group) {
    const marks = group.marks.map((each) => boundsWithinEnds(each, figures.ends));
    const band = placeBetween(better, own, marks, equalWithin, reach);
    return foundIn({ group: group.group, origin: group.origin, halls: null, ages: null, end }, band, (n) =>
      widthOfPlace(n, group.open),
    );
  }
  const among = (of: AgeBand | null) => {
    const others = group.here.others(athleteId, of === null ? null : of.from);
    const band = placeAmong(better, own, others, equalWithin, reach);
    return foundIn({ group: group.group, origin: null, halls: null, ages: of, end }, band, (n) =>
      widthOfPlace(n, 0),
    );
  };
  return [...among(null), ...(ages === null ? [] : among(ages))];
}

function foundIn(
  which: Omit<PlaceAmongOthers, "n" | "low" | "high">,
  band: PlaceBand | null,
  widthFor: (n: number) => number,
): Found[] {
  return band === null ? [] : [{ place: { ...which, ...band }, width: widthFor(band.n) }];
}

/**
 * Chooses the group that is most like the athlete, and of those the most informative, whatever the mark: of exact marks
 * the largest; a group with bounds has to be larger to make up for them. The first of equal ones, today's before all.
 * First come groups of the own age, last those without reported categories.
 */
export function chosenOf(found: readonly Found[]): PlaceAmongOthers | null {
  const sameAge = found.filter(({ place }) => place.ages !== null);
  const sameCategory = found.filter(({ place }) => place.group !== "mixed");
  const [first, ...others] = [sameAge, sameCategory, found].find((some) => some.length > 0) ?? [];
  if (first === undefined) return null;
  return others.reduce((best, each) => (each.width < best.width ? each : best), first).place;
}
