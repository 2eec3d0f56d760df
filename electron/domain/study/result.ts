import { mean } from "simple-statistics";
import type { Icc } from "../statistics/agreement.ts";
import { iccOf } from "../statistics/icc.ts";
import { typicalErrorInterval } from "../statistics/reliability.ts";
import { twoWay } from "../statistics/two-way.ts";
import { type Bias, biasesOf } from "./bias.ts";
import { type PairOfSeries, pairsOf } from "./limits.ts";
import { athletesForBias, athletesForError } from "./needed.ts";
import { type VarianceParts, varianceParts } from "./parts.ts";
import { type Estimated, leastAthletes, type StudyRow, wholeRows } from "./shape.ts";

/** What a study shows. Values are in grains, intervals hold with 95 %. */
export interface StudyResult {
  /** Athletes with a reading in every series, and those left out because one is missing. */
  readonly athletes: number;
  readonly leftOut: number;
  /** The mean of all readings. */
  readonly mean: number;
  /** ICC(2,1): the share of the variance that is athletes'. Null where no two readings differ. */
  readonly icc: Icc | null;
  readonly typicalError: Estimated & { readonly degrees: number };
  /** Of each series against all others, in order. */
  readonly biases: readonly Bias[];
  readonly pairs: readonly PairOfSeries[];
  readonly parts: VarianceParts;
  /** How many athletes it takes in all; more than {@link mostAthletes} where no study is large enough. */
  readonly needed: { readonly forError: number; readonly forBias: number };
}

/**
 * Works out a study. Null while fewer than three athletes have a reading in every series.
 * @param matters the least bias worth a word, in grains: above nought
 */
export function studyResult(rows: readonly StudyRow[], matters: number): StudyResult | null {
  const table = wholeRows(rows);
  if (table.length < leastAthletes) return null;
  const squares = twoWay(table);
  const { subjects, repeats } = squares;
  const biases = biasesOf(table, matters);
  const spread = Math.max(...biases.map((bias) => bias.spread));
  return {
    athletes: subjects,
    leftOut: rows.length - subjects,
    mean: mean(table.flat()),
    icc: iccOf(squares),
    typicalError: errorOf(squares.error, (subjects - 1) * (repeats - 1)),
    biases,
    pairs: pairsOf(table),
    parts: varianceParts(squares),
    needed: {
      forError: athletesForError(repeats),
      forBias: athletesForBias(spread, matters, repeats),
    },
  };
}

function errorOf(square: number, degrees: number): StudyResult["typicalError"] {
  const value = Math.sqrt(square);
  return { value, ...typicalErrorInterval(value, degrees), degrees };
}
