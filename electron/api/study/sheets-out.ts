import type { StudyResult } from "../../domain/study/result.ts";
import { studyResult } from "../../domain/study/result.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { type SheetCell, writeSheet } from "../../sheets/write.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { dayById } from "../../store/tables/days.ts";
import type { StudySeries } from "../../store/tables/studies.ts";
import type { ReadStudy } from "./rows.ts";
import { mattersIn } from "./view.ts";

/** The files of a study: its readings, and what they show. */
export const studySheets = ["readings", "results"] as const;
export type StudySheet = (typeof studySheets)[number];

/** Makes one of a study's files as CSV; amounts in the test's unit. */
export function sheetOfStudy(
  db: ReadableDb,
  read: ReadStudy,
  which: StudySheet,
): { name: string; text: string } {
  const { study } = read;
  const name = `tapeline-study-${study.test}-${study.at.slice(0, 10)}-${which}.csv`;
  return { name, text: which === "readings" ? readingsText(db, read) : resultsText(db, read) };
}

function readingsText(db: ReadableDb, { study, series, rows }: ReadStudy): string {
  const people = new Map(allAthletes(db).map((athlete) => [athlete.id, athlete]));
  const lines = rows.flatMap(({ athleteId, values }) => {
    const who = people.get(athleteId);
    return who === undefined ? [] : [[...whoCells(who), ...values.map((value) => inUnit(study.test, value))]];
  });
  const heads = series.map((each) => seriesName(db, each));
  return writeSheet(["league", "number", "name", ...heads], lines, { forSpreadsheets: true });
}

function whoCells({ league, number, name }: Athlete): SheetCell[] {
  return [league, number, name];
}

/** Names a series in a file: by its place, and by its judge, day or date. */
function seriesName(db: ReadableDb, { position, judge, date, dayId }: StudySeries): string {
  const day = dayId === null ? null : (dayById(db, dayId)?.date ?? null);
  const of = judge !== "" ? judge : (day ?? date ?? "");
  return `reading_${position}_${of}`;
}

function inUnit(test: TestCode, grains: number | null): number | null {
  return grains === null ? null : Number((grains / protocolOf(test).grain.perUnit).toFixed(5));
}

type Line = readonly [
  measure: string,
  of: string,
  value: number | null,
  low: number | null,
  high: number | null,
  unit: string,
];

function resultsText(db: ReadableDb, { study, series, rows }: ReadStudy): string {
  const result = studyResult(rows, mattersIn(db, study.test, rows, "cm"));
  const names = series.map((each) => seriesName(db, each));
  const lines = result === null ? [] : resultLines(study.test, result, names);
  return writeSheet(["measure", "of", "value", "low_95", "high_95", "unit"], lines, {
    forSpreadsheets: true,
  });
}

function resultLines(test: TestCode, result: StudyResult, names: readonly string[]): Line[] {
  const { unit } = protocolOf(test).grain;
  const { icc, typicalError, biases, pairs, parts, needed } = result;
  const line = (
    measure: string,
    of: string,
    value: number,
    ends: { low: number; high: number } | null,
  ): Line => [
    ...([measure, of, inUnit(test, value)] as const),
    ...([inUnit(test, ends?.low ?? null), inUnit(test, ends?.high ?? null), unit] as const),
  ];
  return [
    ["athletes", "", result.athletes, null, null, "athletes"],
    ["not_whole", "", result.leftOut, null, null, "athletes"],
    line("mean", "", result.mean, null),
    ["icc_2_1", "", icc?.value ?? null, icc?.low ?? null, icc?.high ?? null, "share"],
    line("typical_error", "", typicalError.value, typicalError),
    ...biases.map((bias, at) => line("bias_against_others", names[at] ?? "", bias.value, bias)),
    ...pairs.flatMap(({ first, second, bias, lower, upper }) => {
      const both = `${names[first]} - ${names[second]}`;
      return [
        line("mean_difference", both, bias.value, bias),
        line("lower_limit_of_agreement", both, lower.value, lower),
        line("upper_limit_of_agreement", both, upper.value, upper),
      ];
    }),
    line("sd_of_athletes", "", Math.sqrt(parts.athletes.variance), null),
    line("sd_of_series", "", Math.sqrt(parts.series.variance), null),
    line("sd_of_rest", "", Math.sqrt(parts.rest.variance), null),
    ["athletes_for_typical_error", "", needed.forError, null, null, "athletes"],
    ["athletes_for_bias", "", needed.forBias, null, null, "athletes"],
  ];
}
