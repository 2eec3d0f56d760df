import { type Compared, focusOf } from "../../domain/cards/focus.ts";
import { toneOf } from "../../domain/cards/tone.ts";
import { type TypicalError, typicalError } from "../../domain/statistics/change.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import { earlierMarks, parametersOf } from "../../store/tables/marks.ts";
import { tellMarks } from "../marks/marks.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import { placesOn } from "../place/place.ts";
import type { PlaceAmongOthers } from "../place/schemas.ts";
import { type Carded, cardedOf, chosenOf, type WhichCards } from "./people.ts";
import { type CardTest, cardTest } from "./tests.ts";

/** The cards that are asked for, in the order in which they are printed. */
export function cardsOf(db: ReadableDb, day: Day, which: WhichCards, lengths: LengthUnit) {
  const people = chosenOf(cardedOf(db, day), which);
  const only = which.kind === "athlete" ? which.athleteId : null;
  const errors = typicalErrorsOf(db);
  const places = placesOn(db, day);
  const marks = Map.groupBy(tellMarks(db, day, only, errors), ({ athleteId }) => athleteId);
  const earlier = Map.groupBy(earlierMarks(db, day, only), (mark) => `${mark.athleteId} ${mark.fingerprint}`);
  const names = new Map(testCodes.map((test) => [test, fingerprintsOf(db, day, test)]));
  return people.map((person) => {
    const own = marks.get(person.id) ?? [];
    const tests = testCodes.map((test) =>
      cardTest({
        test,
        lengths,
        date: day.date,
        error: errors[test],
        fingerprints: names.get(test) ?? new Map(),
        marks: own.filter((mark) => mark.test === test),
        earlier: (name) => earlier.get(`${person.id} ${name}`) ?? [],
        place: (variant, value) => places({ athleteId: person.id, test, variant, value }),
      }),
    );
    return cardOf(person, tests, errors);
  });
}

/** Returns the fingerprints of a test's marks under the day's rules, by variant. */
function fingerprintsOf(db: ReadableDb, day: Day, test: TestCode): ReadonlyMap<string, string> {
  const parameters = parametersOf(db, day.id, test);
  return new Map(
    protocolOf(test).variants.map((variant) => [variant, fingerprint(test, variant, parameters)]),
  );
}

function cardOf(
  { id, name, number, league, bib }: Carded,
  tests: CardTest[],
  errors: Readonly<Record<TestCode, TypicalError>>,
) {
  return {
    athleteId: id,
    ...{ name, number, league, bib, tests },
    focus: focusOf(tests.map((each) => comparedOf(each, errors[each.test]))),
    tone: toneOf(tests.flatMap(({ told }) => told?.news ?? [])),
  };
}

function comparedOf(each: CardTest, error: TypicalError): Compared {
  return { test: each.test, change: changeOf(each, error), place: bandOf(each.place) };
}

/** A change in units of its own noise, with the typical error at the mean of the two marks, as the verdict takes it. */
function changeOf({ test, told }: CardTest, error: TypicalError): number | null {
  const { change = null, previous = null } = told?.news ?? {};
  if (told?.mark.state !== "complete" || change === null || previous === null) return null;
  const spread = Math.SQRT2 * typicalError(test, (told.mark.value + previous) / 2, error);
  // Two marks of 0 have no noise that is a share of them.
  return spread > 0 ? change / spread : null;
}

function bandOf(place: PlaceAmongOthers | null): Compared["place"] {
  if (place === null) return null;
  return { group: `${place.group} ${place.origin ?? ""}`, low: place.low, high: place.high };
}
