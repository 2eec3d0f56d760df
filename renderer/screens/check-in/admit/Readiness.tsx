import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { noToAll, type Question, questions } from "../../../../electron/domain/people/questions.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import css from "./AdmissionForm.module.css";
import type { FormPart } from "./useAnswers.ts";
import { YesNo } from "./YesNo.tsx";

interface ReadinessProps extends FormPart {
  /** True if nothing is asked before: then the focus begins here, on no answer. */
  readonly isFirst: boolean;
}

/**
 * Asks the questions before testing. The answers stay in this window and are gone with the sheet. Enter answers nothing
 * here: pressed twice after a search, it would answer what nobody has asked.
 */
export function Readiness({ answers, set, missing, focusNext, isFirst }: ReadinessProps) {
  const { t } = useTranslation("checkIn");
  const [shape, setShape] = useState<"list" | "rows" | "folded">("list");
  const list = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    if (isFirst) list.current?.focus({ preventScroll: true });
  }, [isFirst]);

  function say(question: Question, yes: boolean): void {
    set({ said: { ...answers.said, [question]: yes } });
  }
  function allNo(): void {
    set({ said: noToAll });
    setShape("folded");
    focusNext({ ...answers, said: noToAll });
  }
  function oneByOne(): void {
    setShape("rows");
    focusNext(answers);
  }
  if (shape === "folded") {
    return (
      <p className={css.row} data-start>
        <span>{t("readiness.saidNo")}</span>
        <Button onPress={() => setShape("rows")}>{t("readiness.again")}</Button>
      </p>
    );
  }
  // A missing answer is shown where it is given.
  const asRows = shape === "rows" || questions.some((question) => missing.has(question));
  return (
    <fieldset
      ref={list}
      className={css.group}
      tabIndex={-1}
      data-start
      onKeyDownCapture={keepEnterFromRadios}
    >
      <legend className="unseen">{t("readiness.title")}</legend>
      <span>
        <span className={`lead ${css.legend}`} aria-hidden="true">
          {t("readiness.title")}
        </span>{" "}
        <span className={`small quiet ${css.aside}`}>{t("readiness.kept")}</span>
      </span>
      {!asRows && <QuestionList />}
      <Row gap={3} lines={2} align="center" wrap>
        <Button onPress={allNo}>{t("readiness.allNo")}</Button>
        {!asRows && <Button onPress={oneByOne}>{t("readiness.oneByOne")}</Button>}
      </Row>
      {asRows &&
        questions.map((question) => (
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
      {answers.said.medicine === true && <p className={css.note}>{t("readiness.atHand")}</p>}
      {answers.said.cold === true && <p className={css.note}>{t("readiness.warmUp")}</p>}
    </fieldset>
  );
}

/** Lists all questions at once, to be read aloud or by the athlete. */
function QuestionList() {
  const { t } = useTranslation("checkIn");
  return (
    <ul className={css.questions}>
      {questions.map((question) => (
        <li key={question} data-part={question}>
          {t(`readiness.${question}`)}
        </li>
      ))}
    </ul>
  );
}

/** Keeps Enter from the radio buttons, for which it means "choose this one"; Ctrl+Enter goes on to the form. */
function keepEnterFromRadios(event: KeyboardEvent): void {
  if (event.key !== "Enter" || event.ctrlKey || event.metaKey) return;
  if (!(event.target instanceof HTMLInputElement)) return;
  event.preventDefault();
  event.stopPropagation();
}
