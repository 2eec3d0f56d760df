import { consentOf } from "../../domain/privacy/consent.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type ComparableMark, latestMarks, marksToCompare } from "../../store/reads/comparable-marks.ts";
import { type Athlete, allAthletes, type Category } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { type GroupElsewhere, groupsElsewhere } from "./elsewhere.ts";
import type { Sort } from "./sort.ts";

/** Marks of this store to compare with, one an athlete. */
interface GroupHere {
  readonly group: "today" | "store";
  readonly marks: readonly ComparableMark[];
}

export type Group = GroupHere | GroupElsewhere;

/**
 * The groups that a mark of a day may be compared with, one after the other: here, then elsewhere. Nobody is in a group
 * of the store who has not agreed to share (and whose guardian has not, where that is asked), or who wants to be compared
 * otherwise. An athlete is in the store's group once, with the latest mark up to that day; past results on sheets are not
 * in it, since nobody here saw them measured.
 */
export function groupsOf(db: ReadableDb, day: Day, sort: Sort): Group[] {
  const { test, fingerprint, category } = sort;
  const agreed = agreedOf(db, day.date, category);
  const own = (marks: readonly ComparableMark[]) => marks.filter(({ athleteId }) => agreed.has(athleteId));
  return [
    { group: "today", marks: own(marksToCompare(db, day.id, test, fingerprint)) },
    { group: "store", marks: own(latestMarks(db, { test, fingerprint, date: day.date })) },
    ...groupsElsewhere(db, sort),
  ];
}

/** Ids of those who agreed that their marks are counted, and want to be compared in that category. */
function agreedOf(db: ReadableDb, date: string, category: Category | null): ReadonlySet<Athlete["id"]> {
  const agreed = allAthletes(db).filter(
    (athlete) => athlete.category === category && consentOf(athlete, date) === "given",
  );
  return new Set(agreed.map(({ id }) => id));
}
