import { useState } from "react";
import { useTranslation } from "react-i18next";
import { type Question, questions } from "../../../../electron/domain/people/questions.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import css from "./AdmissionForm.module.css";
import type { FormPart } from "./useAnswers.ts";
import { YesNo } from "./YesNo.tsx";

interface ReadinessProps extends FormPart {
  /** True where nothing is asked before: then the focus begins here. */
  readonly isFirst: boolean;
}

/** The four questions before testing. What is answered stays in this window and is gone with the sheet. */
export function Readiness({ answers, set, missing, focusNext, isFirst }: ReadinessProps) {
  const { t } = useTranslation("checkIn");
  const [folded, setFolded] = useState(false);

  function say(question: Question, yes: boolean): void {
    set({ said: { ...answers.said, [question]: yes } });
  }
  function allNo(): void {
    const said = { body: false, clinician: false, hard: false, cold: false };
    set({ said });
    setFolded(true);
    focusNext({ ...answers, said });
  }
  if (folded) {
    return (
      <p className={css.row}>
        <span>{t("readiness.saidNo")}</span>
        <Button onPress={() => setFolded(false)}>{t("readiness.again")}</Button>
      </p>
    );
  }
  return (
    <fieldset className={css.group}>
      <legend className="unseen">{t("readiness.title")}</legend>
      <Row gap={3} lines={2} align="center" wrap between>
        <span>
          <span className={css.legend} aria-hidden="true">
            {t("readiness.title")}
          </span>{" "}
          <span className={css.aside}>{t("readiness.kept")}</span>
        </span>
        <Button onPress={allNo} autoFocus={isFirst}>
          {t("readiness.allNo")}
        </Button>
      </Row>
      {questions.map((question) => (
        <YesNo
          key={question}
          part={question}
          label={t(`readiness.${question}`)}
          yes={t("readiness.yes")}
          no={t("readiness.no")}
          value={answers.said[question]}
          onChange={(yes) => say(question, yes)}
          error={missing.has(question) ? t("readiness.answer") : null}
        />
      ))}
      {answers.said.cold === true && <p className={css.note}>{t("readiness.warmUp")}</p>}
    </fieldset>
  );
}
