import { fingerprint } from "../../domain/protocols/fingerprint.ts";
import type { TestCode } from "../../domain/protocols/protocol.ts";
import { protocolOf } from "../../domain/protocols/registry.ts";
import { placeAmong } from "../../domain/statistics/place.ts";
import { type Athlete, athleteById } from "../../store/athletes.ts";
import type { Database } from "../../store/database.ts";
import type { Day } from "../../store/days.ts";
import { parametersOf } from "../../store/marks.ts";
import { type Group, groupsOf, type Reference } from "./groups.ts";
import type { Place } from "./schemas.ts";

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
export function placesOn(
  db: Database,
  day: Day,
  references: readonly Reference[] = [],
): (mark: MarkToPlace) => Place | null {
  const known = new Map<string, Group[]>();
  return ({ athleteId, test, variant, value }) => {
    const athlete = athleteById(db, athleteId);
    if (athlete === undefined) return null;
    const { category } = athlete;
    const name = fingerprint(test, variant, parametersOf(db, day.id, test));
    const key = `${category} ${name}`;
    const groups = known.get(key) ?? groupsOf(db, day, { test, fingerprint: name, category }, references);
    known.set(key, groups);
    return widest(groups.flatMap((group) => placeIn(group, athleteId, test, value) ?? []));
  };
}

/**
 * Where one mark of a day stands among others of the same rules and category; null: there are not enough to compare
 * with. Never for the board.
 */
export function placeOf(
  db: Database,
  day: Day,
  athleteId: Athlete["id"],
  test: TestCode,
  variant: string,
  value: number,
  references: readonly Reference[] = [],
): Place | null {
  return placesOn(db, day, references)({ athleteId, test, variant, value });
}

/** The athlete's own marks don't count among those of the others: nobody is better than themself. */
function placeIn({ group, origin, marks }: Group, athleteId: number, test: TestCode, value: number) {
  const { better, equalWithin } = protocolOf(test);
  const others = marks.filter((mark) => mark.athleteId !== athleteId);
  const values = others.map((mark) => mark.value);
  const band = placeAmong(better, value, values, equalWithin);
  return band === null ? null : { group, origin, ...band };
}

/** Of the groups that are large enough, the one with most marks; the first of equal ones, today's before all. */
function widest(places: readonly Place[]): Place | null {
  return places.reduce<Place | null>(
    (best, place) => (best === null || place.n > best.n ? place : best),
    null,
  );
}
