import { everybody } from "../../domain/reference-table/table.ts";
import { leastToCompare } from "../../domain/statistics/place.ts";
import { type AlikeInterval, leftOpen } from "../../domain/statistics/place-between.ts";
import { boundsWithinEnds } from "../../domain/statistics/place-ends.ts";
import { type GroupInPercentiles, widthInPercentiles } from "../../domain/statistics/place-in-percentiles.ts";
import { definitionOf } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import { type MarksOfOrigin, marksFromElsewhere } from "../../store/tables/reference-bundles.ts";
import { groupsFromTables } from "../../store/tables/reference-tables.ts";
import { type MarksHere, marksHere, type Sort } from "./marks-here.ts";

interface GroupHere {
  readonly group: "today" | "store";
  readonly here: MarksHere;
}

export type Group = GroupHere | GroupElsewhere | GroupInTable;

/**
 * Returns the groups to compare a day's mark with: first here, then elsewhere. Each athlete of the store's group is in it
 * once, with the latest mark up to that day. Past results on sheets are excluded, since nobody here saw them measured.
 */
export function groupsOf(db: ReadableDb, day: Day, sort: Sort): Group[] {
  const { today, store } = marksHere(db, day, sort);
  return [
    { group: "today", here: today },
    { group: "store", here: store },
    ...groupsElsewhere(db, sort, day.date),
    ...groupsInTables(db, sort, day.date),
  ];
}

/** Marks from one origin elsewhere, as bounds; nobody here knows whose they are. */
interface GroupElsewhere {
  /** mixed: of athletes without a reported category. */
  readonly group: "imported" | "mixed";
  /** The organiser's name for the origin. */
  readonly origin: string;
  readonly marks: readonly AlikeInterval[];
  readonly n: number;
  /** The largest share of the marks that the bounds can leave undecided, better or worse. */
  readonly open: number;
}

/**
 * Returns the references to compare a mark with: of the same fingerprint, one per origin, those of the same category
 * apart from those without one.
 */
function groupsElsewhere(db: ReadableDb, { fingerprint, category }: Sort, date: string): GroupElsewhere[] {
  const origins = Map.groupBy(marksFromElsewhere(db, fingerprint, date), ({ origin }) => origin);
  return [...origins].flatMap(([origin, all]) => {
    const same = all.filter((marks) => marks.category === (category ?? "unknown"));
    const mixed = all.filter((marks) => marks.category === "not told");
    return [groupOf("imported", origin, same), groupOf("mixed", origin, mixed)];
  });
}

function groupOf(
  group: GroupElsewhere["group"],
  origin: string,
  marks: readonly MarksOfOrigin[],
): GroupElsewhere {
  const n = marks.reduce((sum, { count }) => sum + count, 0);
  return { group, origin, marks, n, open: leftOpen(marks) };
}

/** A group of a reference table, of which percentiles alone are known. */
interface GroupInTable {
  /** mixed: of everybody, whatever their category. */
  readonly group: "imported" | "mixed";
  /** The publisher. */
  readonly origin: string;
  readonly halls: number;
  /** The age band in words; null for all ages. */
  readonly ages: string | null;
  readonly told: GroupInPercentiles;
  /** How wide a place in it can get (`widthInPercentiles`). */
  readonly width: number;
}

/**
 * Returns the groups of all tables that may be used on a day (ISO 8601): of the same fingerprint and category, by age band
 * and of all ages, and those of everybody. One that says less than twenty independent marks would is left out: it would
 * stand before others, and say nothing.
 */
function groupsInTables(db: ReadableDb, { test, fingerprint, category }: Sort, date: string): GroupInTable[] {
  const { ends } = definitionOf(test).figures;
  const told = groupsFromTables(db, fingerprint, date).filter(({ countsAs }) => countsAs >= leastToCompare);
  const same = told.filter((group) => group.category === (category ?? "unknown"));
  const all = told.filter((group) => group.category === everybody && group.ageBand === everybody);
  return [...same, ...all].map((group): GroupInTable => {
    const { publisher: origin, halls, ageBand, marks, countsAs } = group;
    const percentiles = group.percentiles.map((each) => boundsWithinEnds(each, ends));
    const inPercentiles = { marks, countsAs, percentiles };
    return {
      group: group.category === everybody ? "mixed" : "imported",
      ...{ origin, halls, ages: ageBand === everybody ? null : ageBand },
      ...{ told: inPercentiles, width: widthInPercentiles(inPercentiles) },
    };
  });
}
