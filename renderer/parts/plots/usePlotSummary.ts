import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { useWriteDay } from "../../words/dates.ts";
import { useMarkText } from "../../words/marks.ts";
import type { HistoryPoint } from "./points.ts";

/** Describes a plot in one sentence for screen readers. */
export function usePlotSummary(test: TestCode, points: readonly HistoryPoint[]): string {
  const { t } = useTranslation(["plots", "common"]);
  const testWord = useTestWords();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return "";
  return t("summary", {
    count: points.length,
    test: testWord(test, "ability"),
    first: markText(first.written),
    firstDate: writeDay(first.date),
    last: markText(last.written),
    lastDate: writeDay(last.date),
  });
}
