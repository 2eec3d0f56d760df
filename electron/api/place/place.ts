import { placeAmong } from "../../domain/statistics/place.ts";
import { placeBetween, widthOfPlace } from "../../domain/statistics/place-between.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, athleteById } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { type Group, groupsOf } from "./groups.ts";
import type { PlaceAmongOthers } from "./schemas.ts";

/** A complete mark of a day; `value` in the test's grains. */
export interface MarkToPlace {
  readonly athleteId: Athlete["id"];
  readonly test: TestCode;
  readonly variant: string;
  readonly value: number;
}

/**
 * Finds places of marks of one day; groups are read once and kept, so that a day's cards take one reading a group. Use
 * it up at once: it does not see what is entered after it was made.
 */
export function placesOn(db: ReadableDb, day: Day): (mark: MarkToPlace) => PlaceAmongOthers | null {
  const known = new Map<string, Group[]>();
  return ({ athleteId, test, variant, value }) => {
    const athlete = athleteById(db, athleteId);
    if (athlete === undefined) return null;
    const { category } = athlete;
    const name = fingerprint(test, variant, parametersOf(db, day.id, test));
    const key = `${category} ${name}`;
    const groups = known.get(key) ?? groupsOf(db, day, { test, fingerprint: name, category });
    known.set(key, groups);
    return chosenOf(groups.flatMap((group) => placeIn(group, athleteId, test, value) ?? []));
  };
}

/**
 * Where one mark of a day stands among others of the same rules and category; null: there are not enough to compare
 * with. Never for the board.
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

/** A place, and how wide a place in that group can be. */
interface Found {
  readonly place: PlaceAmongOthers;
  readonly width: number;
}

/** The athlete's own marks don't count among those of the others: nobody is better than themself. */
function placeIn(group: Group, athleteId: number, test: TestCode, value: number): Found | null {
  const { better, equalWithin } = protocolOf(test);
  if ("origin" in group) {
    const { origin, marks, open } = group;
    const band = placeBetween(better, value, marks, equalWithin);
    if (band === null) return null;
    return { place: { group: group.group, origin, ...band }, width: widthOfPlace(band.n, open) };
  }
  const others = group.marks.filter((mark) => mark.athleteId !== athleteId).map((mark) => mark.value);
  const band = placeAmong(better, value, others, equalWithin);
  if (band === null) return null;
  return { place: { group: group.group, origin: null, ...band }, width: widthOfPlace(band.n, 0) };
}

/**
 * Of the groups that are large enough, the one that says most, whatever the mark is: of exact marks the largest, and
 * marks told as bounds have to be that many more. The first of equal ones, today's before all; one of athletes whose
 * category was not told only where there is no other.
 */
function chosenOf(found: readonly Found[]): PlaceAmongOthers | null {
  const sameCategory = found.filter(({ place }) => place.group !== "mixed");
  const [first, ...others] = sameCategory.length > 0 ? sameCategory : found;
  if (first === undefined) return null;
  return others.reduce((best, each) => (each.width < best.width ? each : best), first).place;
}
