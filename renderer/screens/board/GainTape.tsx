import { useTranslation } from "react-i18next";
import { clearChance, likelyChance } from "../../../electron/domain/statistics/change.ts";
import { normalQuantile } from "../../../electron/domain/statistics/normal.ts";
import css from "./GainTape.module.css";

/** The length of the tape in spreads of a difference from day to day; longer gains run off its end. */
const length = 3.4;
const likely = normalQuantile(likelyChance);
const clear = normalQuantile(clearChance);

const share = (spreads: number) => `${(100 * Math.min(spreads, length)) / length}%`;

/**
 * Draws the gain as a length of tape from the athlete's own best: over the zone of a day's noise, the likely zone or
 * the clear one. It adds nothing to the number and the verdict, and concerns only this athlete.
 */
export function GainTape({ spreads }: { readonly spreads: number }) {
  const { t } = useTranslation("board");
  return (
    <div className={`quiet ${css.tape}`} aria-hidden="true">
      <p className={css.from}>{t("newest.from")}</p>
      <div className={css.lane} data-beyond={spreads > length}>
        <i className={css.noise} style={{ width: share(likely) }} />
        <i className={css.clear} style={{ left: share(clear) }} />
        <i className={css.gain} style={{ width: share(spreads) }} />
      </div>
      <p className={css.zones}>
        <span style={{ width: share(likely) }}>{t("newest.zone.noise")}</span>
        <span style={{ width: share(clear - likely) }}>{t("newest.zone.likely")}</span>
        <span>{t("newest.zone.clear")}</span>
      </p>
    </div>
  );
}
