import { useTranslation } from "react-i18next";

/** Formats quarters and years: "Q1 2026, 2025". */
export function useWriteQuarters(): (quarters: readonly string[]) => string {
  const { t } = useTranslation("reference");
  return (quarters) =>
    quarters
      .map((told) => {
        const [, year = told, quarter] = /^(\d{4})-Q([1-4])$/.exec(told) ?? [];
        return quarter === undefined ? year : t("quarter", { quarter, year });
      })
      .join(", ");
}
