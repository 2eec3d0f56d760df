import { useTranslation } from "react-i18next";

interface Bounds {
  readonly low: number | null;
  readonly high: number | null;
}

/** Formats an interval in words: "under 30", "30 to under 35", "35 and more". */
export function useBounds(): (bounds: Bounds) => string {
  const { t } = useTranslation("bundle");
  return ({ low, high }) => {
    if (low === null) return t("bounds.under", { high });
    return high === null ? t("bounds.from", { low }) : t("bounds.between", { low, high });
  };
}
