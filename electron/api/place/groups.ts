import { consentOf } from "../../domain/privacy/consent.ts";
import { type AlikeInterval, leftOpen } from "../../domain/statistics/place-between.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type ComparableMark, latestMarks, marksToCompare } from "../../store/reads/comparable-marks.ts";
import { type Athlete, allAthletes, type Category } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { type MarksOfOrigin, marksFromElsewhere } from "../../store/tables/reference-bundles.ts";

/** The marks that compare: of one fingerprint, and of athletes in one category. */
interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}

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
function groupsElsewhere(db: ReadableDb, { fingerprint, category }: Sort): GroupElsewhere[] {
  const origins = Map.groupBy(marksFromElsewhere(db, fingerprint), ({ origin }) => origin);
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
