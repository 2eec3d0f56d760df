import { bandOfAges } from "../../domain/privacy/quasi.ts";
import { reachOf } from "../../domain/statistics/change.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athletes, athletesOf } from "../../store/reads/athletes-kept.ts";
import type { Day } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import { chosenOf, type MarkToPlace, type PlaceAmongOthers, placesIn } from "./among.ts";
import { type Group, groupsOf } from "./groups.ts";

/**
 * Makes a function that finds the place of a day's mark among others by the same rules and of the same category; null with
 * too few others. Groups are read once and kept, so that a day's cards read each group once. Use it at once: it does not see
 * later entries. Never for the big screen.
 */
export function placesOn(db: ReadableDb, day: Day): (mark: MarkToPlace) => PlaceAmongOthers | null {
  const known = new Map<string, Group[]>();
  let athletes: Athletes | undefined;
  const errors = typicalErrorsOf(db, day.id);
  return ({ athleteId, test, variant, value }) => {
    athletes ??= athletesOf(db);
    const athlete = athletes.get(athleteId);
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
