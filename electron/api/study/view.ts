import type { Bias } from "../../domain/study/bias.ts";
import type { PairOfSeries } from "../../domain/study/limits.ts";
import { biasThatMattersAmong } from "../../domain/study/matters.ts";
import type { VariancePart } from "../../domain/study/parts.ts";
import { type StudyResult, studyResult } from "../../domain/study/result.ts";
import { mostAthletes, type StudyRow, wholeRows } from "../../domain/study/shape.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allAthletes } from "../../store/tables/athletes.ts";
import { dayById } from "../../store/tables/days.ts";
import { entrants } from "../../store/tables/entrants.ts";
import type { StudySeries } from "../../store/tables/studies.ts";
import { hasReadings } from "../../store/tables/study-readings.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import { quantityOf } from "../noise/quantity.ts";
import type { Quantity } from "../noise/schemas.ts";
import type { ReadStudy } from "./rows.ts";
import { isReadAtStation } from "./to-read.ts";

/**
 * Returns a study for a screen or paper: what was planned, who has been read, and what it shows. Points of the picture
 * are grains; other amounts are in the test's unit.
 */
export function viewStudy(db: ReadableDb, { study, series, rows }: ReadStudy, lengths: LengthUnit) {
  const { dayId, ...planned } = study;
  const matters = mattersIn(db, study.test, rows, lengths);
  const result = studyResult(rows, matters);
  return {
    study: { ...planned, day: dayOf(db, dayId), mayDrop: !hasReadings(db, study.id) },
    series: series.map((each, at) => viewSeries(db, each, rows, at)),
    rows: viewRows(db, dayId, study.test, rows, lengths),
    whole: wholeRows(rows).length,
    /** True where a device at the station can bring readings now. */
    atDevices: isReadAtStation(db, study),
    matters: quantityOf(study.test, matters, lengths),
    result: result === null ? null : viewResult(study.test, result, lengths),
  };
}

/** Returns the least bias worth a word, at the mean of the readings. */
export function mattersIn(
  db: ReadableDb,
  test: TestCode,
  rows: readonly StudyRow[],
  lengths: LengthUnit,
): number {
  return biasThatMattersAmong(test, rows, typicalErrorsOf(db, 0)[test], lengths);
}

function dayOf(db: ReadableDb, dayId: number | null) {
  const day = dayId === null ? undefined : dayById(db, dayId);
  return day === undefined ? null : { id: day.id, date: day.date, title: day.title };
}

function viewSeries(db: ReadableDb, series: StudySeries, rows: readonly StudyRow[], at: number) {
  const { position, judge, date, dayId } = series;
  const missing = rows.filter(({ values }) => values[at] === null).length;
  return { position, judge, date, day: dayOf(db, dayId), read: rows.length - missing, missing };
}

function viewRows(
  db: ReadableDb,
  dayId: number | null,
  test: TestCode,
  rows: readonly StudyRow[],
  lengths: LengthUnit,
) {
  const read = new Map(rows.map(({ athleteId, values }) => [athleteId, values]));
  const here = dayId === null ? [] : entrants(db, dayId);
  const bibs = new Map(here.map(({ athleteId, bib }) => [athleteId, bib]));
  const { write } = protocolOf(test);
  return allAthletes(db).flatMap(({ id, name, number, league }) => {
    const values = read.get(id);
    if (values === undefined) return [];
    const written = values.map((value) => (value === null ? null : write(value, lengths)));
    return [{ athleteId: id, name, number, league, bib: bibs.get(id) ?? null, values: written }];
  });
}

function viewResult(test: TestCode, result: StudyResult, lengths: LengthUnit) {
  const inUnit = (grains: number) => quantityOf(test, grains, lengths);
  const { athletes, leftOut, icc, typicalError, biases, pairs, parts, needed } = result;
  const all = parts.athletes.variance + parts.series.variance + parts.rest.variance;
  const part = ({ variance, belowZero }: VariancePart) => ({
    spread: inUnit(Math.sqrt(variance)),
    percent: all === 0 ? 0 : Math.round((100 * variance) / all),
    belowZero,
  });
  return {
    athletes,
    leftOut,
    mean: inUnit(result.mean),
    icc,
    typicalError: { ...within(typicalError, inUnit), degrees: typicalError.degrees },
    biases: biases.map((bias) => viewBias(bias, inUnit)),
    pairs: pairs.map((pair) => viewPair(pair, inUnit)),
    parts: { athletes: part(parts.athletes), series: part(parts.series), rest: part(parts.rest) },
    more: { forError: moreThan(athletes, needed.forError), forBias: moreThan(athletes, needed.forBias) },
  };
}

/** Returns how many more athletes it takes: 0 for none, null where no study is large enough. */
function moreThan(athletes: number, needed: number): number | null {
  return needed > mostAthletes ? null : Math.max(0, needed - athletes);
}

type InUnit = (grains: number) => Quantity;

function within({ value, low, high }: Readonly<Record<"value" | "low" | "high", number>>, inUnit: InUnit) {
  return { value: inUnit(value), low: inUnit(low), high: inUnit(high) };
}

function viewBias(bias: Bias, inUnit: InUnit) {
  return { ...within(bias, inUnit), word: bias.word };
}

function viewPair({ first, second, points, bias, lower, upper }: PairOfSeries, inUnit: InUnit) {
  return {
    ...{ first, second, points: points.map(({ mean, difference }) => ({ mean, difference })) },
    bias: { ...within(bias, inUnit), spread: inUnit(bias.spread) },
    lower: within(lower, inUnit),
    upper: within(upper, inUnit),
    lines: { bias: bias.value, lower: lower.value, upper: upper.value },
  };
}
