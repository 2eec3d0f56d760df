import { consentOf } from "../../domain/privacy/consent.ts";
import type { TestCode } from "../../domain/protocols/protocol.ts";
import { type Athlete, allAthletes, type Category } from "../../store/athletes.ts";
import type { Database } from "../../store/database.ts";
import type { Day } from "../../store/days.ts";
import { latestMarks, marksToCompare, type ReferenceMark } from "../../store/reference.ts";

/** Marks from elsewhere that somebody brought in to compare with: of one fingerprint and one category. */
export interface Reference {
  /** What people call it. */
  readonly origin: string;
  readonly test: TestCode;
  readonly fingerprint: string;
  /** null: of everybody who did not say how they want to be compared. */
  readonly category: Category | null;
  /** Grains, one an athlete. */
  readonly values: readonly number[];
}

/** One group to compare with: the marks in it, and whose they are where that is known. */
export interface Group {
  readonly group: "today" | "store" | "imported";
  readonly origin: string | null;
  readonly marks: readonly { readonly athleteId: number | null; readonly value: number }[];
}

/** What is compared: marks of one fingerprint, of athletes of one category. */
export interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}

/**
 * The groups that a mark of a day may be compared with, one after the other. Nobody is in a group of the store who has
 * not agreed to share (and whose guardian has not, where that is asked), or who wants to be compared otherwise. An
 * athlete is in the store's group once, with the latest mark up to that day; past results on sheets are not in it,
 * since nobody here saw them measured.
 */
export function groupsOf(db: Database, day: Day, sort: Sort, references: readonly Reference[]): Group[] {
  const { test, fingerprint, category } = sort;
  const agreed = agreedOf(db, day.date, category);
  const own = (marks: readonly ReferenceMark[]) => marks.filter(({ athleteId }) => agreed.has(athleteId));
  const brought = references.filter(
    (each) => each.test === test && each.fingerprint === fingerprint && each.category === category,
  );
  return [
    { group: "today", origin: null, marks: own(marksToCompare(db, day.id, test, fingerprint)) },
    { group: "store", origin: null, marks: own(latestMarks(db, { test, fingerprint, date: day.date })) },
    ...brought.map(
      ({ origin, values }): Group => ({
        group: "imported",
        origin,
        marks: values.map((value) => ({ athleteId: null, value })),
      }),
    ),
  ];
}

/** Ids of those who agreed that their marks are counted, and want to be compared in that category. */
function agreedOf(db: Database, date: string, category: Category | null): ReadonlySet<Athlete["id"]> {
  const agreed = allAthletes(db).filter(
    (athlete) => athlete.category === category && consentOf(athlete, date) === "given",
  );
  return new Set(agreed.map(({ id }) => id));
}
