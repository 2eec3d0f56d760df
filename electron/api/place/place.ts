import { consentOf } from "../../domain/privacy/consent.ts";
import { spreadsBelow, typicalError } from "../../domain/statistics/change.ts";
import { upperShare } from "../../domain/statistics/interval.ts";
import { placeAmong } from "../../domain/statistics/place.ts";
import {
  type AlikeInterval,
  leftOpen,
  placeBetween,
  widthOfPlace,
} from "../../domain/statistics/place-between.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type ComparableMark, latestMarks, marksToCompare } from "../../store/reads/comparable-marks.ts";
import { type Athlete, allAthletes, athleteById, type Category } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { type MarksOfOrigin, marksFromElsewhere } from "../../store/tables/reference-bundles.ts";
import { typicalErrorsOf } from "../noise/errors.ts";

/** A mark's place in a reference group; nothing in it identifies any of the others. */
export interface PlaceAmongOthers {
  /**
   * today: athletes who test today. store: every day of this store. imported: a reference from elsewhere. mixed: one
   * without reported categories.
   */
  readonly group: "today" | "store" | "imported" | "mixed";
  /** Name of an imported reference; null for the store's own groups. */
  readonly origin: string | null;
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

/**
 * Makes a function that finds places of one day's marks. Groups are read once and kept, so that a day's cards read each
 * group once. Use it at once: it does not see later entries.
 */
export function placesOn(db: ReadableDb, day: Day): (mark: MarkToPlace) => PlaceAmongOthers | null {
  const known = new Map<string, Group[]>();
  const errors = typicalErrorsOf(db, day.id);
  return ({ athleteId, test, variant, value }) => {
    const athlete = athleteById(db, athleteId);
    if (athlete === undefined) return null;
    const { category } = athlete;
    const name = fingerprint(test, variant, parametersOf(db, day.id, test));
    const key = `${category} ${name}`;
    const groups = known.get(key) ?? groupsOf(db, day, { test, fingerprint: name, category });
    known.set(key, groups);
    // A place is the athlete's, who would have shown another mark on another day.
    const reach = spreadsBelow(upperShare(0.95), errors[test]) * typicalError(test, value, errors[test]);
    return chosenOf(
      groups.flatMap((group) => placeIn(group, { athleteId, test, variant, value }, reach) ?? []),
    );
  };
}

/**
 * Returns the place of a day's mark among others by the same rules and of the same category; null with too few others.
 * Never for the big screen.
 */
export function placeAmongOthers(
  db: ReadableDb,
  day: Day,
  athleteId: Athlete["id"],
  test: TestCode,
  variant: string,
  value: number,
): PlaceAmongOthers | null {
  return placesOn(db, day)({ athleteId, test, variant, value });
}

/** A place, and the possible width of a place in that group. */
interface Found {
  readonly place: PlaceAmongOthers;
  readonly width: number;
}

/** Returns the place in a group without the athlete's own marks: nobody is better than themselves. */
function placeIn(group: Group, { athleteId, test, value }: MarkToPlace, reach: number): Found | null {
  const { better, equalWithin } = protocolOf(test);
  if ("origin" in group) {
    const { origin, marks, open } = group;
    const band = placeBetween(better, value, marks, equalWithin, reach);
    if (band === null) return null;
    return { place: { group: group.group, origin, ...band }, width: widthOfPlace(band.n, open) };
  }
  const others = group.marks.filter((mark) => mark.athleteId !== athleteId).map((mark) => mark.value);
  const band = placeAmong(better, value, others, equalWithin, reach);
  if (band === null) return null;
  return { place: { group: group.group, origin: null, ...band }, width: widthOfPlace(band.n, 0) };
}

/**
 * Chooses the most informative of the large enough groups, whatever the mark: of exact marks the largest; a group with
 * bounds has to be larger to make up for them. The first of equal ones, today's before all; one without reported
 * categories only if there is no other.
 */
function chosenOf(found: readonly Found[]): PlaceAmongOthers | null {
  const sameCategory = found.filter(({ place }) => place.group !== "mixed");
  const [first, ...others] = sameCategory.length > 0 ? sameCategory : found;
  if (first === undefined) return null;
  return others.reduce((best, each) => (each.width < best.width ? each : best), first).place;
}

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

type Group = GroupHere | GroupElsewhere;

/**
 * Yields the groups to compare a day's mark with: first here, then elsewhere. The store's group excludes athletes who
 * have not agreed to share (or whose guardian has not, where needed), or who chose another category. Each athlete is in
 * it once, with the latest mark up to that day. Past results on sheets are excluded, since nobody here saw them
 * measured.
 */
function groupsOf(db: ReadableDb, day: Day, sort: Sort): Group[] {
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
