import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { Section } from "../../parts/layout/Panel.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteTime } from "../../words/dates.ts";
import css from "./AthletePage.module.css";
import type { AthletePage } from "./types.ts";

interface AttemptsProps {
  readonly attempts: AthletePage["attempts"];
  readonly lengths: LengthUnit;
}

type Attempt = AthletePage["attempts"][number];

/** Lists all of today's attempts in the order of entry; void ones stay, with who voided them, when and why. */
export function Attempts({ attempts, lengths }: AttemptsProps) {
  const { t } = useTranslation("athletes");
  return (
    <Section title={t("attempts.title")}>
      {attempts.length === 0 ? (
        <p className="small quiet">{t("attempts.none")}</p>
      ) : (
        <ol>
          {attempts.map((attempt) => (
            <AttemptRow key={attempt.attemptId} attempt={attempt} lengths={lengths} />
          ))}
        </ol>
      )}
    </Section>
  );
}

function AttemptRow({ attempt, lengths }: { readonly attempt: Attempt; readonly lengths: LengthUnit }) {
  const { t } = useTranslation("athletes");
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const { test, seen, by, at, note, void: ended } = attempt;
  return (
    <li className={css.attempt} data-void={ended !== null}>
      <span>{writeTime(at)}</span>
      <TestMark test={test} size="small" />
      <span>
        <span className={css.seen}>{writeSeen(test, seen, lengths)}</span>
        {note !== "" && <span className="small quiet"> {note}</span>}
        {ended !== null && (
          <span className={css.ended}>
            {t("attempts.void", { reason: ended.reason, by: ended.by, time: writeTime(ended.at) })}
          </span>
        )}
      </span>
      <span>{by}</span>
    </li>
  );
}
