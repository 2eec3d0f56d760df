import { useTranslation } from "react-i18next";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useWriteDay } from "../../screens/station/clock.ts";
import type { HistoryPoint } from "./points.ts";

/** A mark as a short text with its unit where it needs one: "24 reps", "3:21". */
export function useWriteMark(): (written: Written) => string {
  const { t } = useTranslation("common");
  return ({ number, unit }) => (unit === "" || unit === "min:s" ? number : `${number} ${t(`unit.${unit}`)}`);
}

/** What a plot shows, in one sentence for those who listen. */
export function useSummary(test: TestCode, points: readonly HistoryPoint[]): string {
  const { t } = useTranslation(["plots", "common"]);
  const writeDay = useWriteDay();
  const writeMark = useWriteMark();
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return "";
  return t("summary", {
    count: points.length,
    test: t(`common:test.${test}.ability`),
    first: writeMark(first.written),
    firstDate: writeDay(first.date),
    last: writeMark(last.written),
    lastDate: writeDay(last.date),
  });
}
