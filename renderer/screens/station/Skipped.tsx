import { useTranslation } from "react-i18next";
import { Button } from "../../parts/Button.tsx";
import css from "./Queue.module.css";
import type { StationView } from "./types.ts";

interface SkippedProps {
  readonly skipped: StationView["skipped"];
  readonly onTakeBack: (athleteId: number) => void;
}

/** Who skips this test and why; each can be put back. */
export function Skipped({ skipped, onTakeBack }: SkippedProps) {
  const { t } = useTranslation("station");
  return (
    <div className={css.skipped}>
      <h3>{t("queue.skipped")}</h3>
      <ul>
        {skipped.map(({ who, reason, by }) => (
          <li key={who.athleteId} className={css.skip}>
            <span>{t("queue.skippedOne", { bib: who.bib, name: who.name, reason, by })}</span>
            <Button
              label={t("queue.takeBackWho", { bib: who.bib, name: who.name })}
              onPress={() => onTakeBack(who.athleteId)}
            >
              {t("queue.takeBack")}
            </Button>
          </li>
        ))}
      </ul>
    </div>
  );
}
