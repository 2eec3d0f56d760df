import { besideChange, fairNewsOf } from "../../domain/marks/fair-news.ts";
import { fewTrials } from "../../domain/marks/otherwise.ts";
import { spreadsBelow, typicalError } from "../../domain/statistics/change.ts";
import { foresee } from "../../domain/statistics/foresee.ts";
import { upperShare } from "../../domain/statistics/interval.ts";
import { withoutLearning } from "../../domain/statistics/learning.ts";
import { type Level, levelOf, type Speed, speedOf } from "../../domain/statistics/level.ts";
import { levelShown, numbered } from "../../domain/statistics/news.ts";
import { noiseBand } from "../../domain/statistics/noise-band.ts";
import type { Variation } from "../../domain/statistics/variation.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { writeMark } from "../../domain/tests/written.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type HistoryMark, historyOf } from "../../store/reads/history.ts";
import { type Day, dayById } from "../../store/tables/days.ts";
import { type KeptMark, parametersOf } from "../../store/tables/marks.ts";
import { variationsOf } from "../noise/errors.ts";
import { quantityOf } from "../noise/quantity.ts";
import type { Quantity } from "../noise/schemas.ts";
import { placesOn } from "../place/place.ts";

/** One athlete's marks of one test and variant that compare. @public declarations of all procedures name it */
export interface Series extends ReturnType<typeof shown>, ReturnType<typeof placeIn> {
  readonly test: TestCode;
  readonly variant: string;
}

/** A complete mark outside all series. @public declarations of all procedures name it */
export interface Apart extends ReturnType<typeof toldOf> {
  readonly test: TestCode;
  readonly variant: string;
  /** otherRules: of another fingerprint. notEarlier: of the same date from a sheet, or of a later one. */
  readonly why: "otherRules" | "notEarlier";
}

/** A mark of any day, or from a sheet. */
type Known = HistoryMark & { readonly today: boolean };

/**
 * Returns all complete marks of an athlete. Those that compare are series in the order of the tests (by today's rules
 * if there is a day, else by the newest mark's); the others follow apart, newest first.
 */
export function seriesOf(
  db: ReadableDb,
  day: Day | null,
  athleteId: number,
  marks: readonly KeptMark[],
  lengths: LengthUnit,
) {
  const known = [...todays(day, marks), ...historyOf(db, athleteId, day?.id ?? 0).map(ofBefore)];
  // Without a day at hand, the newest mark is told as on the card and in the summary of its day.
  const variations = variationsOf(db, day?.id ?? known[0]?.dayId ?? 0);
  const placeOf = placing(db);
  const series: Series[] = [];
  const apart: Apart[] = [];
  for (const [test, variant] of ways()) {
    const own = known.filter((mark) => mark.test === test && mark.variant === variant);
    const rules = day === null ? own[0]?.fingerprint : fingerprintOf(db, day, test, variant);
    const same = own.filter((mark) => mark.fingerprint === rules);
    const compared = same.filter((mark) => isInTurn(mark, same, day));
    for (const mark of own) {
      if (compared.includes(mark)) continue;
      const why = mark.fingerprint === rules ? "notEarlier" : "otherRules";
      apart.push({ test, variant, ...toldOf(mark, lengths), why });
    }
    if (compared.length === 0) continue;
    series.push({
      ...{ test, variant },
      ...shown(compared.toReversed(), variations[test], lengths),
      ...placeIn(placeOf, athleteId, compared[0]),
    });
  }
  return { series, apart: apart.toSorted((a, b) => b.date.localeCompare(a.date)) };
}

/** Returns every test with each variant, in order. */
function ways(): [TestCode, string][] {
  return testCodes.flatMap((test) =>
    protocolOf(test).variants.map((variant): [TestCode, string] => [test, variant]),
  );
}

function todays(day: Day | null, marks: readonly KeptMark[]): Known[] {
  return marks.flatMap(({ test, variant, fingerprint: rules, mark, made: how }) => {
    if (day === null || mark.state !== "complete") return [];
    const { id: dayId, date } = day;
    const { value } = mark;
    const made = { ...how, trials: fewTrials(mark) };
    return { test, variant, fingerprint: rules, date, dayId, value, source: "day", today: true, made };
  });
}

function ofBefore(mark: HistoryMark): Known {
  return { ...mark, today: false };
}

function fingerprintOf(db: ReadableDb, day: Day, test: TestCode, variant: string): string {
  return fingerprint(test, variant, parametersOf(db, day.id, test));
}

/**
 * True if a mark counts in its series. A sheet's mark does not on a date with one from a day of this store; nor does
 * any mark after the current day.
 */
function isInTurn(mark: Known, same: readonly Known[], day: Day | null): boolean {
  if (mark.today) return true;
  if (mark.source === "imported") {
    const ofThatDate = same.some((other) => other.source === "day" && other.date === mark.date);
    if (ofThatDate) return false;
  }
  if (day === null || mark.date < day.date) return true;
  return mark.date === day.date && mark.source === "day" && mark.dayId < day.id;
}

/** Formats a mark with its day. */
function toldOf({ date, test, value, source }: Known, lengths: LengthUnit) {
  return { date, source, written: writeMark(test, { state: "complete", value }, lengths) };
}

/** @param marks oldest first, at least one, all of one test and variant. */
function shown(marks: readonly Known[], variation: Variation, lengths: LengthUnit) {
  const { error, drift, hall } = variation;
  const [{ test } = { test: testCodes[0] }] = marks;
  const before = marks.at(-1)?.today === true ? marks.slice(0, -1) : marks;
  const foreseen = foresee(test, numbered(before), variation);
  const now = levelOf(numbered(marks), drift.perWeek, 1 + hall.variance);
  return {
    /** Oldest first, at least one. */
    points: marks.map((mark, index) => pointOf(mark, marks.slice(0, index), variation, lengths)),
    /** The band of no change, in grains, around what the marks before today's foretell, or all marks. */
    noise: foreseen === null ? null : noiseBand(test, foreseen, error),
    /** What the athlete is good for by all marks, and how it moves; null for a single mark. */
    level: now === null || marks.length < 2 ? null : toldLevel(test, now, marks, variation, lengths),
    /** True while the noise is an assumption; this store's pairs behind it, and changes behind the chances (0: none). */
    error: { assumed: error.assumed, pairs: error.pairs, changes: drift.changes },
  };
}

/** Returns what somebody is good for now, 95 times in 100 within so much, and how it moves; null with too few marks. */
function toldLevel(
  test: TestCode,
  now: Level,
  marks: readonly Known[],
  { error, drift, learning, hall }: Variation,
  lengths: LengthUnit,
) {
  const reach = spreadsBelow(upperShare(0.95), error) * typicalError(test, now.value, error);
  // Knowing the test is no training.
  const trained = withoutLearning(numbered(marks), learning, error);
  const speed = speedOf(trained, drift.perWeek, 1 + hall.variance);
  const quantity = (grains: number) => quantityOf(test, grains, lengths);
  return {
    written: protocolOf(test).write(levelShown(test, now.value), lengths),
    within: quantity(reach * Math.sqrt(now.variance)),
    speed: speed === null ? null : toldSpeed(test, speed, reach, quantity),
  };
}

const weeksInMonth = 365.25 / 12 / 7;

type Direction = "gaining" | "losing" | "unclear";

/** Tells a speed of marks as a gain in a month (of somebody who loses, a loss) with its 95 % interval. */
function toldSpeed(test: TestCode, speed: Speed, reach: number, quantity: (grains: number) => Quantity) {
  const towards = protocolOf(test).better === "higher" ? weeksInMonth : -weeksInMonth;
  const gained = speed.perWeek * towards;
  const within = reach * Math.sqrt(speed.variance) * weeksInMonth;
  const direction: Direction = gained > within ? "gaining" : gained < -within ? "losing" : "unclear";
  const told = direction === "losing" ? -gained : gained;
  const ends = { low: quantity(told - within), high: quantity(told + within) };
  return { direction, perMonth: quantity(told), ...ends };
}

/** Tells a mark among those before it: its standing, and its change from their level in grains, where positive is better. */
function pointOf(mark: Known, before: readonly Known[], variation: Variation, lengths: LengthUnit) {
  const { test, value, today } = mark;
  const news = fairNewsOf(test, mark, before, variation);
  const { standing, earlier, level, change, verdict, chanceReal } = news;
  const beside = besideChange(test, { mark, news }, before, variation);
  const told = { ...toldOf(mark, lengths), value, today, standing, earlier, level };
  return { ...told, change, verdict, chanceReal, beside };
}

/** Finds places on whichever day, each day's groups read once. */
function placing(db: ReadableDb) {
  const byDay = new Map<number, ReturnType<typeof placesOn> | null>();
  return (dayId: number) => {
    const known = byDay.get(dayId);
    if (known !== undefined) return known;
    const day = dayById(db, dayId);
    const places = day === undefined ? null : placesOn(db, day);
    byDay.set(dayId, places);
    return places;
  };
}

/** Returns the place of the newest mark among others of its day, if it is from a day of this store; null with too few. */
function placeIn(placeOf: ReturnType<typeof placing>, athleteId: number, newest: Known | undefined) {
  const places = newest === undefined ? null : placeOf(newest.dayId);
  if (newest === undefined || places === null) return { placed: false, place: null };
  const { test, variant, value } = newest;
  return { placed: true, place: places({ athleteId, test, variant, value }) };
}
