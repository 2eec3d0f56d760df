import { useTranslation } from "react-i18next";

/** Formats quarters and years: "Q1 2026, 2025". */
export function useWriteQuarters(): (quarters: readonly string[]) => string {
  const write = useWriteQuarter();
  return (quarters) => quarters.map(write).join(", ");
}

/** Formats the first and the last quarter, or year, of a span: "Q1 2025 to Q3 2026", or the one that is both. */
export function useWriteSpan(): (ends: readonly string[]) => string {
  const { t } = useTranslation("reference");
  const write = useWriteQuarter();
  return ([from = "", to]) =>
    to === undefined ? write(from) : t("span", { from: write(from), to: write(to) });
}

function useWriteQuarter(): (told: string) => string {
  const { t } = useTranslation("reference");
  return (told) => {
    const [, year = told, quarter] = /^(\d{4})-Q([1-4])$/.exec(told) ?? [];
    return quarter === undefined ? year : t("quarter", { quarter, year });
  };
}
