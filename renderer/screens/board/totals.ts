import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";

/** A count of the day and its words. */
export interface Total {
  readonly number: number;
  readonly words: string;
}

/**
 * The counts of the day that are worth a figure. `news`: personal bests and first results, of those there are any; on a
 * first day nobody can have a best, and a nought would tell everybody otherwise. `done`: tests and athletes.
 */
export function useTotals(): (totals: Board["totals"]) => { news: Total[]; done: Total[] } {
  const { t } = useTranslation("board");
  return ({ bests, firsts, testsDone, athletesTested }) => ({
    news: counted([
      { number: bests, words: t("totals.bests", { count: bests }) },
      { number: firsts, words: t("totals.firsts", { count: firsts }) },
    ]),
    done: counted([
      { number: testsDone, words: t("totals.tests", { count: testsDone }) },
      { number: athletesTested, words: t("totals.athletes", { count: athletesTested }) },
    ]),
  });
}

function counted(totals: Total[]): Total[] {
  return totals.filter(({ number }) => number > 0);
}
