import { mean } from "simple-statistics";
import { type MeanDifference, meanDifference } from "./difference.ts";
import { leastForWord, type Table } from "./shape.ts";

/**
 * What is said of a judge. few: too few athletes for any word; alike: chance alone may make such a difference; slight:
 * more than chance, and too small to matter; higher, lower: more than chance, and it matters.
 * @public declarations of the procedures name it
 */
export type BiasWord = "few" | "alike" | "slight" | "higher" | "lower";

/** How far one series reads above (positive) or below all others together, in grains. */
export interface Bias extends MeanDifference {
  readonly word: BiasWord;
}

/** Largest chance that a study in which nobody differs is said to show somebody who does. */
const errorRate = 0.05;

/**
 * Returns each series' bias against the mean of the others, athlete by athlete. All intervals together hold with 95 %:
 * of two judges both say the same, of more each is wider (Bonferroni).
 * @param matters the least bias worth a word, in grains
 */
export function biasesOf(table: Table, matters: number): Bias[] {
  const series = table[0]?.length ?? 0;
  const level = levelFor(series);
  return Array.from({ length: series }, (_, at) => {
    const own = meanDifference(
      table.map((row) => differenceAt(row, at)),
      level,
    );
    return { ...own, word: wordFor(own, table.length, matters) };
  });
}

/** Returns the confidence level of one interval among so many series. */
export function levelFor(series: number): number {
  return 1 - errorRate / (series > 2 ? series : 1);
}

function differenceAt(row: readonly number[], at: number): number {
  return (row[at] ?? 0) - mean(row.filter((_, other) => other !== at));
}

function wordFor({ value, low, high }: MeanDifference, athletes: number, matters: number): BiasWord {
  if (athletes < leastForWord) return "few";
  if (low <= 0 && high >= 0) return "alike";
  if (Math.abs(value) < matters) return "slight";
  return value > 0 ? "higher" : "lower";
}
