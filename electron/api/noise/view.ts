import { middleRank } from "../../domain/marks/rank.ts";
import { gain, startingTypicalErrors, typicalError } from "../../domain/statistics/change.ts";
import { iccOf } from "../../domain/statistics/icc.ts";
import { upperShare } from "../../domain/statistics/interval.ts";
import type { Learning } from "../../domain/statistics/learning.ts";
import { normalQuantile } from "../../domain/statistics/normal.ts";
import { quantile } from "../../domain/statistics/quantile.ts";
import { smallestWorthwhileChange, typicalErrorInterval } from "../../domain/statistics/reliability.ts";
import type { Estimate } from "../../domain/statistics/repeats.ts";
import { firstMarkJudged } from "../../domain/statistics/threshold.ts";
import { twoWay } from "../../domain/statistics/two-way.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { definitionOf, protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { newestMarks } from "../../store/reads/newest-marks.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { noiseOf, type TestNoise } from "./known.ts";
import { quantityOf } from "./quantity.ts";
import type { NoiseView, Quantity, TestNoiseView } from "./schemas.ts";

/** Fewest athletes for the spread between them; fewer say little. */
const enough = 20;

/**
 * Returns the noise of every test in numbers that a coach can use. While a day is open it is that by which its results are
 * judged: without the day itself, which counts from its end on.
 */
export function viewNoise(db: ReadableDb, lengths: LengthUnit): NoiseView {
  const day = dayAtHand(db);
  const isDayOpen = day?.state === "open";
  const noise = noiseOf(db, isDayOpen ? day.id : 0);
  return { tests: testCodes.map((test) => viewTest(db, test, noise[test], lengths)), isDayOpen, enough };
}

function viewTest(db: ReadableDb, test: TestCode, noise: TestNoise, lengths: LengthUnit): TestNoiseView {
  const { error, hall, own, trials, raised } = noise;
  const start = startingTypicalErrors[test];
  const { values, ...typical } = typicalOf(db, test);
  const { write } = protocolOf(test);
  const inUnit = (grains: number) => quantityOf(test, grains, lengths);
  const atMark = (amount: number) => inUnit(amount * typicalError(test, typical.value, start));
  const used = typicalError(test, typical.value, error);
  const judged = (wanted: "likely gain" | "clear gain") =>
    firstMarkJudged(test, typical.value, wanted, error, lengths, hall.variance);
  const [likely, clear] = [judged("likely gain"), judged("clear gain")];
  const small = values.length < enough ? null : inUnit(smallestWorthwhileChange(values) ?? 0);
  return {
    ...{ test, assumed: error.assumed, pairs: error.pairs, degrees: error.degrees },
    starting: atMark(1),
    source: sentence(`test.${test}.noiseSource`),
    typical: { ...typical, written: write(typical.value, lengths) },
    used: inUnit(used),
    least: inUnit(error.fixed),
    own: own === null ? null : viewOwn(own, atMark),
    trials: trials === null ? null : { used: atMark(trials.amount), athletes: trials.athletes, raised },
    hall: { used: inUnit(used * Math.sqrt(hall.variance)), days: hall.days },
    learning: learningOf(test, noise.learning, (amount) => inUnit(amount * used)),
    likelyFrom: likely === null ? null : write(likely, lengths),
    clearFrom: clear === null ? null : write(clear, lengths),
    // As exact as the two marks that are drawn: whoever takes one from the other gets it.
    clearBy: clear === null ? null : quantityOf(test, Math.abs(clear - typical.value), lengths, 2),
    worthwhile: small?.number === "0" ? null : small,
    icc: noise.alike.length < enough ? null : iccOf(twoWay(noise.alike)),
  };
}

/** Tells the steps that enough athletes took, as gains: of a test in which less is better, a gain is less. */
function learningOf(
  test: TestCode,
  { steps, covariance }: Learning,
  inUnit: (errors: number) => Quantity,
): TestNoiseView["learning"] {
  return steps.flatMap(({ by, athletes }, step) => {
    if (athletes === 0) return [];
    const gained = gain(protocolOf(test).better, 0, by);
    const reach = normalQuantile(upperShare(0.95)) * Math.sqrt(covariance[step]?.[step] ?? 0);
    const ends = { low: inUnit(gained - reach), high: inUnit(gained + reach) };
    return [{ from: step + 1, by: inUnit(gained), ...ends, athletes }];
  });
}

function viewOwn(own: Estimate, atMark: (amount: number) => Quantity): TestNoiseView["own"] {
  const { low, high } = typicalErrorInterval(own.amount, own.degrees);
  return { used: atMark(own.amount), low: atMark(low), high: atMark(high), degrees: own.degrees };
}

/** Returns the middle one of the newest day's marks. */
function typicalOf(db: ReadableDb, test: TestCode) {
  const newest = newestMarks(db, test);
  if (newest === undefined)
    return { value: definitionOf(test).figures.middling, date: null, marks: 0, values: [] };
  const { date, values, ranks } = newest;
  // Where half of them stopped, the middle of those who finished explains the test.
  const value = Math.round(middleRank(ranks) ?? quantile(values, 0.5));
  return { value, date, marks: values.length, values };
}
