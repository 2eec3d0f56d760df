import { useTranslation } from "react-i18next";
import type { LengthUnit, TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import { BigNumber } from "../../../parts/BigNumber.tsx";
import { Tag } from "../../../parts/Tag.tsx";
import { useNow, useWriteDay, useWriteTime } from "../clock.ts";
import type { Found } from "../types.ts";
import { useWriteValue } from "../write.ts";
import css from "./AthleteCard.module.css";

interface AthleteCardProps {
  readonly test: TestCode;
  readonly found: Found;
  readonly variant: string;
  readonly lengths: LengthUnit;
}

/** Who stands there, big enough to compare with the person: name, league, and the marks that are to be compared. */
export function AthleteCard({ test, found, variant, lengths }: AthleteCardProps) {
  const { t } = useTranslation("station");
  const writeTime = useWriteTime();
  const { who, readyAt } = found;
  const history = found.history.find((each) => each.variant === variant) ?? found.history[0];
  const resting = Date.parse(readyAt) > useNow();
  return (
    <div className={css.card}>
      <div className={css.who}>
        <p className={css.name}>{who.name}</p>
        <p className={css.league}>
          {who.number !== "" && <span className={css.number}>{who.number}</span>}
          {who.league}
        </p>
        {resting && <Tag tone="alert">{t("athlete.resting", { time: writeTime(readyAt) })}</Tag>}
      </div>
      <div className={css.marks}>
        {history?.today != null && history.today.mark.state === "complete" && (
          <BigNumber label={t("athlete.today")} number={history.today.written.number} />
        )}
        {history?.last == null || history.best === null ? (
          <p className={css.never}>{t("athlete.never")}</p>
        ) : (
          <>
            <Earlier test={test} lengths={lengths} label={t("athlete.last")} mark={history.last} />
            <Earlier test={test} lengths={lengths} label={t("athlete.best")} mark={history.best} />
          </>
        )}
      </div>
    </div>
  );
}

interface EarlierProps {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly label: string;
  readonly mark: { readonly date: string; readonly value: number };
}

function Earlier({ test, lengths, label, mark }: EarlierProps) {
  const writeDay = useWriteDay();
  const written = useWriteValue(test, lengths)(mark.value);
  const [number = "", unit] = written.split(" ");
  return <BigNumber label={label} number={number} unit={unit} note={writeDay(mark.date)} />;
}
