import { consentOf } from "../../domain/privacy/consent.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type ComparableMark, latestMarks, marksToCompare } from "../../store/reads/comparable-marks.ts";
import { type Athlete, allAthletes, type Category } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { type GroupElsewhere, groupsElsewhere } from "./elsewhere.ts";
import type { Sort } from "./sort.ts";

/** Marks of this store to compare with, one per athlete. */
interface GroupHere {
  readonly group: "today" | "store";
  readonly marks: readonly ComparableMark[];
}

export type Group = GroupHere | GroupElsewhere;

/**
 * Yields the groups to compare a day's mark with: first here, then elsewhere. The store's group excludes athletes who
 * have not agreed to share (or whose guardian has not, where needed), or who chose another category. Each athlete is in
 * it once, with the latest mark up to that day. Past results on sheets are excluded, since nobody here saw them
 * measured.
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

/** Returns ids of athletes of that category who agreed that their marks count. */
function agreedOf(db: ReadableDb, date: string, category: Category | null): ReadonlySet<Athlete["id"]> {
  const agreed = allAthletes(db).filter(
    (athlete) => athlete.category === category && consentOf(athlete, date) === "given",
  );
  return new Set(agreed.map(({ id }) => id));
}
