import { useTranslation } from "react-i18next";
import { BigNumber } from "../../parts/BigNumber.tsx";
import css from "./Summary.module.css";
import type { Summary } from "./summary.ts";

/** The four numbers that say how the day went. */
export function Numbers({ totals }: { readonly totals: Summary["totals"] }) {
  const { t } = useTranslation("summary");
  const { listed, came, measured, whole, firsts, bests, clearGains } = totals;
  return (
    <div className={css.numbers}>
      <BigNumber
        label={t("numbers.measured")}
        number={measured}
        unit={t("numbers.ofListed", { count: listed })}
        note={t("numbers.came", { count: came })}
      />
      <BigNumber label={t("numbers.whole")} number={whole} note={t("numbers.wholeNote")} />
      <BigNumber label={t("numbers.bests")} number={bests} note={t("numbers.firsts", { count: firsts })} />
      <BigNumber label={t("numbers.gains")} number={clearGains} note={t("numbers.gainsNote")} />
    </div>
  );
}
