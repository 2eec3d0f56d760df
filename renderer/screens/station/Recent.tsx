import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/protocols/protocol.ts";
import { useSay } from "../../app/say.ts";
import { Button } from "../../parts/Button.tsx";
import { Section } from "../../parts/Panel.tsx";
import { useWriteTime } from "./clock.ts";
import css from "./Recent.module.css";
import type { AttemptView, RecentAttempt } from "./types.ts";
import { useWriteSeen } from "./write.ts";

interface RecentProps {
  readonly recent: readonly RecentAttempt[];
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
  readonly onHistory: (attempt: AttemptView) => void;
}

/** The newest attempts, each to be corrected or looked into. */
export function Recent({ recent, ...rest }: RecentProps) {
  const { t } = useTranslation("station");
  return (
    <Section title={t("recent.title")}>
      {recent.length === 0 ? (
        <p className={css.empty}>{t("recent.empty")}</p>
      ) : (
        <table className={css.table}>
          <thead className="unseen">
            <tr>
              {(["time", "who", "seen", "mark", "by"] as const).map((head) => (
                <th key={head} scope="col">
                  {t(`recent.${head}`)}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {recent.map((each) => (
              <Row key={each.attempt.attemptId} recent={each} {...rest} />
            ))}
          </tbody>
        </table>
      )}
    </Section>
  );
}

interface RowProps extends Omit<RecentProps, "recent"> {
  readonly recent: RecentAttempt;
}

function Row({ recent, lengths, onCorrect, onHistory }: RowProps) {
  const { t } = useTranslation(["station", "common"]);
  const say = useSay();
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const { attempt, written } = recent;
  const { who } = attempt;
  const named = { bib: who.bib, name: who.name };
  return (
    <tr data-void={attempt.void !== null}>
      <td className={css.time}>{writeTime(attempt.at)}</td>
      <th scope="row" className={css.who}>
        <span className={css.bib}>{who.bib}</span> {who.name}
      </th>
      <td>
        <span className={css.seen}>{writeSeen(attempt.test, attempt.seen, lengths)}</span>
        {attempt.variant !== "" &&
          ` · ${t(`choice.variant.${attempt.variant === "knee" ? "knee" : "full"}`)}`}
        {attempt.void !== null && <span className={css.void}>{t("recent.void", attempt.void)}</span>}
      </td>
      <td className={css.mark}>
        {written !== null && (
          <>
            <strong>{written.number}</strong>{" "}
            {written.unit !== "" && written.unit !== "min:s" && t(`common:unit.${written.unit}`)}
            {written.number === "" && written.note !== undefined && say(written.note)}
          </>
        )}
      </td>
      <td className={css.by}>{attempt.by}</td>
      <td>
        <div className={css.actions}>
          {attempt.void === null && (
            <Button label={t("recent.correctWho", named)} onPress={() => onCorrect(attempt)}>
              {t("recent.correct")}
            </Button>
          )}
          <Button label={t("recent.historyWho", named)} onPress={() => onHistory(attempt)}>
            {t("recent.history")}
          </Button>
        </div>
      </td>
    </tr>
  );
}
