import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import {
  bringsBack,
  noToAll,
  type Question,
  questions,
  unanswered,
} from "../../../../electron/domain/people/questions.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import css from "./AdmissionForm.module.css";
import type { FormPart } from "./useAnswers.ts";
import { YesNo } from "./YesNo.tsx";

interface ReadinessProps extends FormPart {
  /** True if nothing is asked before: then the focus begins here, on no answer. */
  readonly isFirst: boolean;
  /** True of somebody checked in already: asked again only on purpose. */
  readonly isSettled: boolean;
}

/**
 * Asks the questions before testing. The answers stay in this window and are gone with the sheet. Enter answers nothing
 * here: pressed twice after a search, it would answer what nobody has asked.
 */
export function Readiness(props: ReadinessProps) {
  const { answers, known, set, missing, focusNext, isFirst, isSettled } = props;
  const { t } = useTranslation("checkIn");
  const [shape, setShape] = useState<"list" | "rows">("list");
  // As high as the buttons it takes the place of: nothing else moves under the next finger.
  const [settled, setSettled] = useState<number | null>(isSettled ? 0 : null);
  const acts = useRef<HTMLDivElement>(null);
  const start = useRef<HTMLElement | null>(null);
  useEffect(() => {
    if (isFirst) start.current?.focus({ preventScroll: true });
  }, [isFirst]);
  const setStart = (element: HTMLElement | null) => {
    start.current = element;
  };

  function say(question: Question, yes: boolean): void {
    set({ said: { ...answers.said, [question]: yes } });
  }
  function allNo(): void {
    set({ said: noToAll });
    if (shape === "list") setSettled(acts.current?.offsetHeight ?? 0);
    focusNext({ ...answers, said: noToAll });
  }
  function oneByOne(): void {
    setShape("rows");
    focusNext(answers);
  }
  function again(): void {
    if (isSettled && settled === 0) set({ said: unanswered(known).said });
    setSettled(null);
    setShape("rows");
  }
  if (isSettled && settled === 0) {
    return (
      <div ref={setStart} className={css.before} tabIndex={-1} data-start>
        <Settled isBack={bringsBack(answers, known)} />
        <Button onPress={again}>{t("readiness.again")}</Button>
      </div>
    );
  }
  // A missing answer is shown where it is given.
  const asRows = shape === "rows" || questions.some((question) => missing.has(question));
  return (
    <fieldset
      ref={setStart}
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
      {settled === null ? (
        <div ref={acts}>
          <Row gap={3} lines={2} align="center" wrap>
            <Button onPress={allNo}>{t("readiness.allNo")}</Button>
            {!asRows && <Button onPress={oneByOne}>{t("readiness.oneByOne")}</Button>}
          </Row>
        </div>
      ) : (
        <p className={css.settled} style={{ minHeight: settled }}>
          <span className="strong">{t("readiness.saidNo")}</span>
          <Button onPress={again}>{t("readiness.again")}</Button>
        </p>
      )}
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

/** Says that nothing is asked about health for a change, and when to ask all the same: where a skipped test comes back. */
function Settled({ isBack }: { readonly isBack: boolean }) {
  const { t } = useTranslation("checkIn");
  return (
    <p className={css.either} role="status">
      {/* Both keep their place: nothing moves under the finger that brings a test back. */}
      <span data-kept={isBack}>{t("readiness.before")}</span>
      <strong data-kept={!isBack}>{t("readiness.back")}</strong>
    </p>
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
