import { consentOf } from "../../domain/privacy/consent.ts";
import { type AgeBand, bandOfAges } from "../../domain/privacy/quasi.ts";
import { reachOf } from "../../domain/statistics/change.ts";
import { type PlaceBand, placeAmong } from "../../domain/statistics/place.ts";
import {
  type AlikeInterval,
  leftOpen,
  placeBetween,
  widthOfPlace,
} from "../../domain/statistics/place-between.ts";
import { boundsWithinEnds, endOf, withinEnds } from "../../domain/statistics/place-ends.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
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
    const { category, birthYear } = athlete;
    const name = fingerprint(test, variant, parametersOf(db, day.id, test));
    const key = `${category} ${name}`;
    const groups = known.get(key) ?? groupsOf(db, day, { test, fingerprint: name, category });
    known.set(key, groups);
    const reach = reachOf(test, value, errors[test]);
    const own = { athleteId, test, value, reach, ages: bandOfAges(birthYear, day.date) };
    return chosenOf(groups.flatMap((group) => placesIn(group, own)));
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

/** A mark as it is placed: how far normal variation reaches (grains), and the age band of the athlete. */
interface OwnMark extends Omit<MarkToPlace, "variant"> {
  readonly reach: number;
  readonly ages: AgeBand | null;
}

/** A place, and the possible width of a place in that group. */
interface Found {
  readonly place: PlaceAmongOthers;
  readonly width: number;
}

/**
 * Returns the places in a group, and in the part of it that is of the athlete's own age; without the athlete's own marks,
 * since nobody is better than themselves. Marks beyond the end of a test are equal.
 */
function placesIn(group: Group, { athleteId, test, value, reach, ages }: OwnMark): Found[] {
  const { protocol, figures } = definitionOf(test);
  const [end, own] = [endOf(value, figures.ends), withinEnds(value, figures.ends)];
  const { better, equalWithin } = protocol;
  if ("origin" in group) {
    const marks = group.marks.map((each) => boundsWithinEnds(each, figures.ends));
    const band = placeBetween(better, own, marks, equalWithin, reach);
    return foundIn({ group: group.group, origin: group.origin, ages: null, end }, band, group.open);
  }
  const others = group.marks.filter((mark) => mark.athleteId !== athleteId);
  const among = (some: readonly AgedMark[], of: AgeBand | null) => {
    const values = some.map((mark) => withinEnds(mark.value, figures.ends));
    const band = placeAmong(better, own, values, equalWithin, reach);
    return foundIn({ group: group.group, origin: null, ages: of, end }, band, 0);
  };
  const peers = ages === null ? [] : others.filter((mark) => mark.ages?.from === ages.from);
  return [...among(others, null), ...among(peers, ages)];
}

function foundIn(
  which: Omit<PlaceAmongOthers, "n" | "low" | "high">,
  band: PlaceBand | null,
  open: number,
): Found[] {
  return band === null ? [] : [{ place: { ...which, ...band }, width: widthOfPlace(band.n, open) }];
}

/**
 * Chooses the group that is most like the athlete, and of those the most informative, whatever the mark: of exact marks
 * the largest; a group with bounds has to be larger to make up for them. The first of equal ones, today's before all.
 * First come groups of the own age, last those without reported categories.
 */
function chosenOf(found: readonly Found[]): PlaceAmongOthers | null {
  const sameAge = found.filter(({ place }) => place.ages !== null);
  const sameCategory = found.filter(({ place }) => place.group !== "mixed");
  const [first, ...others] = [sameAge, sameCategory, found].find((some) => some.length > 0) ?? [];
  if (first === undefined) return null;
  return others.reduce((best, each) => (each.width < best.width ? each : best), first).place;
}

/** The marks that compare: of one fingerprint, and of athletes in one category. */
interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}

interface AgedMark extends ComparableMark {
  readonly ages: AgeBand | null;
}

/** Marks of this store to compare with, one per athlete. */
interface GroupHere {
  readonly group: "today" | "store";
  readonly marks: readonly AgedMark[];
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
  const own = (marks: readonly ComparableMark[]) =>
    marks.flatMap((mark): AgedMark[] => {
      const ages = agreed.get(mark.athleteId);
      return ages === undefined ? [] : [{ ...mark, ages }];
    });
  return [
    { group: "today", marks: own(marksToCompare(db, day.id, test, fingerprint)) },
    { group: "store", marks: own(latestMarks(db, { test, fingerprint, date: day.date })) },
    ...groupsElsewhere(db, sort, day.date),
  ];
}

/** Returns the athletes of that category who agreed that their marks count, by id, with their age bands on the day. */
function agreedOf(
  db: ReadableDb,
  date: string,
  category: Category | null,
): ReadonlyMap<Athlete["id"], AgeBand | null> {
  const agreed = allAthletes(db).filter(
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
