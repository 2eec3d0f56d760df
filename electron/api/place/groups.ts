import { consentOf } from "../../domain/privacy/consent.ts";
import { type AgeBand, bandOfAges } from "../../domain/privacy/quasi.ts";
import { everybody } from "../../domain/reference-table/table.ts";
import { leastToCompare } from "../../domain/statistics/place.ts";
import { type AlikeInterval, leftOpen } from "../../domain/statistics/place-between.ts";
import { boundsWithinEnds } from "../../domain/statistics/place-ends.ts";
import { type GroupInPercentiles, widthInPercentiles } from "../../domain/statistics/place-in-percentiles.ts";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type ComparableMark, latestMarks, marksToCompare } from "../../store/reads/comparable-marks.ts";
import type { Athlete, Category } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { type MarksOfOrigin, marksFromElsewhere } from "../../store/tables/reference-bundles.ts";
import { groupsFromTables } from "../../store/tables/reference-tables.ts";

/** The marks that compare: of one fingerprint, and of athletes in one category. */
export interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}

export interface AgedMark extends ComparableMark {
  readonly ages: AgeBand | null;
}

/** Marks of this store to compare with, one per athlete. */
interface GroupHere {
  readonly group: "today" | "store";
  readonly marks: readonly AgedMark[];
}

export type Group = GroupHere | GroupElsewhere | GroupInTable;

/**
 * Yields the groups to compare a day's mark with: first here, then elsewhere. The store's group excludes athletes who
 * have not agreed to share (or whose guardian has not, where needed), or who chose another category. Each athlete is in
 * it once, with the latest mark up to that day. Past results on sheets are excluded, since nobody here saw them
 * measured.
 * @param people everybody in the store
 */
export function groupsOf(db: ReadableDb, day: Day, sort: Sort, people: Iterable<Athlete>): Group[] {
  const { test, fingerprint, category } = sort;
  const agreed = agreedOf(people, day.date, category);
  const own = (marks: readonly ComparableMark[]) =>
    marks.flatMap((mark): AgedMark[] => {
      const ages = agreed.get(mark.athleteId);
      return ages === undefined ? [] : [{ ...mark, ages }];
    });
  return [
    { group: "today", marks: own(marksToCompare(db, day.id, test, fingerprint)) },
    { group: "store", marks: own(latestMarks(db, day, { test, fingerprint })) },
    ...groupsElsewhere(db, sort, day.date),
    ...groupsInTables(db, sort, day.date),
  ];
}

/** Returns those of that category who agreed that their marks count, by id, with their age bands on the day. */
function agreedOf(
  people: Iterable<Athlete>,
  date: string,
  category: Category | null,
): ReadonlyMap<Athlete["id"], AgeBand | null> {
  const agreed = [...people].filter(
    (athlete) => athlete.category === category && consentOf(athlete, date) === "given",
  );
  return new Map(agreed.map(({ id, birthYear }) => [id, bandOfAges(birthYear, date)]));
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
