import { useTranslation } from "react-i18next";
import { BigNumber } from "../../parts/BigNumber.tsx";
import css from "./Glance.module.css";
import type { Preview } from "./preview.ts";

/** The whole in three numbers: how much would leave, how much stays, how few are alike at the least. */
export function Glance({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const { rows, athletes, kReached } = bundle;
  const stays = bundle.held.reduce((sum, held) => sum + held.rows, 0);
  const of = t("glance.of", { athletes: t("count.athletes", { count: athletes }) });
  return (
    <div className={css.glance}>
      <BigNumber
        label={t("glance.leaves")}
        number={rows.length}
        unit={t("glance.marks", { count: rows.length })}
        note={of}
      />
      <BigNumber label={t("glance.stays")} number={stays} unit={t("glance.marks", { count: stays })} />
      {kReached !== null && (
        <BigNumber label={t("glance.alike")} number={kReached} note={t("glance.alikeNote")} />
      )}
    </div>
  );
}
