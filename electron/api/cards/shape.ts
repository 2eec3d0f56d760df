import { type Compared, focusOf } from "../../domain/cards/focus.ts";
import { besidesOf, toneOf } from "../../domain/cards/tone.ts";
import { isDone } from "../../domain/queue/queue.ts";
import { gain } from "../../domain/statistics/change.ts";
import { foresee } from "../../domain/statistics/foresee.ts";
import { numbered } from "../../domain/statistics/news.ts";
import { noiseBand } from "../../domain/statistics/noise-band.ts";
import { normalQuantile } from "../../domain/statistics/normal.ts";
import type { Variation } from "../../domain/statistics/variation.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { LengthUnit, Written } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type EarlierMark, earlierOf } from "../../store/reads/earlier-marks.ts";
import type { Day } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { toldOf } from "../marks/attempts.ts";
import { type MarkWithNews, tellMarks } from "../marks/marks.ts";
import { variationsOf } from "../noise/errors.ts";
import type { PlaceAmongOthers } from "../place/among.ts";
import { placesOn } from "../place/place.ts";
import { type Carded, cardedOf, chosenOf, type WhichCards } from "./people.ts";

/** The cards that are asked for, in the order in which they are printed. */
export function cardsOf(db: ReadableDb, day: Day, which: WhichCards, lengths: LengthUnit) {
  const people = chosenOf(cardedOf(db, day), which);
  const only = which.kind === "athlete" ? which.athleteId : null;
  const variations = variationsOf(db, day.id);
  const places = placesOn(db, day);
  const marks = Map.groupBy(tellMarks(db, day, only), ({ athleteId }) => athleteId);
  const names = new Map(testCodes.map((test) => [test, fingerprintsOf(db, day, test)]));
  return people.map((person) => {
    const own = marks.get(person.id) ?? [];
    const tests = testCodes.map((test) =>
      cardTest({
        test,
        lengths,
        date: day.date,
        variation: variations[test],
        fingerprints: names.get(test) ?? new Map(),
        marks: own.filter((mark) => mark.test === test),
        earlier: (variant, name) =>
          earlierOf(db, day, { athleteId: person.id, test, variant, fingerprint: name }),
        place: (variant, value) => places({ athleteId: person.id, test, variant, value }),
      }),
    );
    return cardOf(person, tests);
  });
}

/** Returns the fingerprints of a test's marks under the day's rules, by variant. */
function fingerprintsOf(db: ReadableDb, day: Day, test: TestCode): ReadonlyMap<string, string> {
  const parameters = parametersOf(db, day.id, test);
  return new Map(
    protocolOf(test).variants.map((variant) => [variant, fingerprint(test, variant, parameters)]),
  );
}

function cardOf({ id, name, number, league, bib }: Carded, tests: CardTest[]) {
  const news = tests.flatMap(({ told }) => told?.news ?? []);
  const tone = toneOf(news);
  return {
    athleteId: id,
    ...{ name, number, league, bib, tests },
    focus: focusOf(tests.map(comparedOf)),
    ...{ tone, besides: besidesOf(tone, news) },
  };
}

function comparedOf(each: CardTest): Compared {
  return { test: each.test, change: changeOf(each), place: bandOf(each.place) };
}

/** More than any change that is believed, where its chance is too small for a number. */
const mostSpreads = 8;

/** Returns a change as the normal deviate that is as seldom for somebody who stayed the same. */
function changeOf({ told }: CardTest): number | null {
  const { beyond = null, byChance = null } = told?.news ?? {};
  if (beyond === null || byChance === null) return null;
  return Math.sign(beyond) * Math.min(mostSpreads, normalQuantile(1 - byChance / 2));
}

function bandOf(place: PlaceAmongOthers | null): Compared["place"] {
  if (place === null) return null;
  const { group, origin, halls, ages, low, high } = place;
  const from = halls === null ? "" : "table";
  return { group: `${group} ${from} ${origin ?? ""} ${ages?.from ?? ""}`, low, high };
}

/** The facts of one test on a card. */
interface TestFacts {
  readonly test: TestCode;
  /** ISO 8601 day. */
  readonly date: string;
  readonly variation: Variation;
  readonly lengths: LengthUnit;
  /** The fingerprint of each variant under the day's rules, in the order of the protocol. */
  readonly fingerprints: ReadonlyMap<string, string>;
  /** The athlete's own marks of this test on the day. */
  readonly marks: readonly MarkWithNews[];
  /** Reads the athlete's own earlier marks of a variant and its fingerprint, oldest first. */
  readonly earlier: (variant: string, fingerprint: string) => readonly EarlierMark[];
  /** Returns a complete mark's place in the reference group; null with too few others. */
  readonly place: (variant: string, value: number) => PlaceAmongOthers | null;
}

type CardTest = ReturnType<typeof cardTest>;

/**
 * One test of a card. `told` is null when it was not taken on this day; then `variant` is the way of the newest mark before.
 * `best` is up to and with this day, `also` what was done on it in another way, which never compares. `points` are the marks of
 * the same rules, oldest first. `noise` (grains) is what is no news after the marks before this day; `assumed`, that it
 * is nothing but an assumption yet. `place` is null when there are not enough others to compare with.
 */
function cardTest(facts: TestFacts) {
  const { test, marks, lengths, variation } = facts;
  const { error } = variation;
  const [chief, ...also] = inOrder(
    facts,
    marks.filter(({ mark }) => isDone(mark)),
  );
  const variant = chief?.variant ?? newestVariant(facts);
  const history = facts.earlier(variant, facts.fingerprints.get(variant) ?? "");
  const foreseen = foresee(test, numbered(history), variation);
  const value = chief?.mark.state === "complete" ? chief.mark.value : null;
  return {
    test,
    variant,
    told: chief === undefined ? null : toldOf(chief, lengths),
    best: bestOf(facts, value === null ? history : [...history, { value }]),
    also: also.map((mark) => toldOf(mark, lengths)),
    points: pointsOf(facts, history, value),
    noise: foreseen === null ? null : noiseBand(test, foreseen, error),
    assumed: error.assumed,
    place: value === null ? null : facts.place(variant, value),
  };
}

/** The variants in the order of the protocol: on a day with both, the full push-ups are what the card is about. */
function inOrder({ fingerprints }: TestFacts, marks: readonly MarkWithNews[]): readonly MarkWithNews[] {
  const order = [...fingerprints.keys()];
  return marks.toSorted((a, b) => order.indexOf(a.variant) - order.indexOf(b.variant));
}

/** The way in which an athlete who did not take the test did it last. */
function newestVariant({ fingerprints, earlier }: TestFacts): string {
  const dated = [...fingerprints].map(([variant, name]) => ({
    variant,
    date: earlier(variant, name).at(-1)?.date ?? "",
  }));
  const [newest] = dated.toSorted((a, b) => b.date.localeCompare(a.date));
  return newest?.variant ?? "";
}

function bestOf(facts: TestFacts, marks: readonly { readonly value: number }[]): Written | null {
  const { better, write } = protocolOf(facts.test);
  const [best] = marks.toSorted((a, b) => gain(better, a.value, b.value));
  return best === undefined ? null : write(best.value, facts.lengths);
}

function pointsOf({ test, date, lengths }: TestFacts, history: readonly EarlierMark[], value: number | null) {
  const { write } = protocolOf(test);
  const before = history.map((mark) => ({ date: mark.date, value: mark.value, today: false }));
  const all = value === null ? before : [...before, { date, value, today: true }];
  return all.map((point) => ({ ...point, written: write(point.value, lengths) }));
}
