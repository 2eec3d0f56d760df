import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import css from "./Glance.module.css";
import type { Preview } from "./preview.ts";

interface GlanceProps {
  readonly bundle: Preview;
  /** Goes to the last step, for an organiser who has looked before. */
  readonly onToFile: () => void;
}

/** Sums the bundle up in three numbers: marks released, marks withheld, and the smallest group of rows alike. */
export function Glance({ bundle, onToFile }: GlanceProps) {
  const { t } = useTranslation("bundle");
  const { rows, athletes, kReached } = bundle;
  const leaves = rows.reduce((sum, { marks }) => sum + marks.length, 0);
  const stays = bundle.held.reduce((sum, held) => sum + held.marks, 0);
  return (
    <div className={css.glance}>
      <BigNumber
        label={t("glance.leaves")}
        number={leaves}
        unit={t("glance.marks", { count: leaves })}
        note={t("glance.of", { athletes: t("count.athletes", { count: athletes }) })}
      />
      <BigNumber
        label={t("glance.stays")}
        number={stays}
        unit={t("glance.marks", { count: stays })}
        {...(stays > 0 && { note: t("glance.see") })}
      />
      {kReached !== null && (
        <BigNumber
          label={t("glance.smallest")}
          number={kReached}
          unit={t("glance.athletes", { count: kReached })}
          note={t("glance.alike")}
        />
      )}
      <Button onPress={onToFile}>{t("glance.toFile")}</Button>
    </div>
  );
}
