import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { useWriteTime } from "../../words/dates.ts";
import { BigNumber } from "../marks/BigNumber.tsx";
import css from "./EndBetween.module.css";

interface EndBetweenProps {
  /** Instants, ISO 8601. */
  readonly from: string;
  readonly until: string;
  readonly note: ReactNode;
}

/** Shows the two times between which a day ends. */
export function EndBetween({ from, until, note }: EndBetweenProps) {
  const { t } = useTranslation("day");
  const writeTime = useWriteTime();
  return (
    <BigNumber
      label={t("ends.between")}
      number={
        <>
          {writeTime(from)} <span className={css.and}>{t("ends.and")}</span> {writeTime(until)}
        </>
      }
      note={note}
    />
  );
}
