import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import {
  type AdmissionOutcome,
  deciderOf,
  decisionOf,
  type Known,
  outcomeOf,
} from "../../../../electron/domain/people/questions.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useKeys } from "../../../app/keys.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./AdmissionForm.module.css";
import { Age } from "./Age.tsx";
import { Consents } from "./Consents.tsx";
import { Decision } from "./Decision.tsx";
import { Readiness } from "./Readiness.tsx";
import { useAnswers } from "./useAnswers.ts";

interface AdmissionFormProps {
  readonly known: Known;
  /** The athlete's bib, or the next free one. */
  readonly bib: number;
  /** True if it is the athlete's already. */
  readonly hasBib: boolean;
  /** True of somebody checked in already, whose answers are changed: nobody asks about health again. */
  readonly isSettled?: boolean;
  /** Fields before the questions: who a walk-up is. */
  readonly children?: ReactNode;
  /** Checked together with the answers; false keeps the form from being sent. */
  readonly alsoCheck?: () => boolean;
  readonly onSend: (outcome: AdmissionOutcome) => void;
  readonly busy: boolean;
  /** The reason of a refusal; all answers stay. */
  readonly refusal: Sentence | null;
}

/** Asks the questions in the order in which they are read aloud, with the one button at the end. */
export function AdmissionForm(props: AdmissionFormProps) {
  const {
    known,
    bib,
    hasBib,
    children,
    alsoCheck = () => true,
    onSend,
    busy,
    refusal,
    isSettled = false,
  } = props;
  const { t } = useTranslation("checkIn");
  const say = useSay();
  const part = useAnswers(known, isSettled);
  const { answers, set, missing, open } = part;
  const tests = decisionOf(answers) !== "none";
  const decider = deciderOf(answers);
  const bibRefusal = refusal !== null && ["checkIn.bibTaken", "checkIn.badBib"].includes(refusal.key);

  function send(): void {
    const identityIsGood = alsoCheck();
    const isComplete = part.check();
    if (!identityIsGood) focusFirstFault(part.form.current);
    else if (isComplete && !busy) onSend(outcomeOf(answers, known));
  }
  useKeys({ "Ctrl+Enter": send });

  return (
    <form
      ref={part.form}
      className={css.form}
      noValidate
      // Handled before the radio buttons, for which Enter means "choose this one".
      onKeyDownCapture={(event) => {
        if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
        event.preventDefault();
        event.stopPropagation();
        send();
      }}
      onFocus={(event) => keepInSight(event.target)}
      onSubmit={(event) => {
        event.preventDefault();
        send();
      }}
    >
      <div className={css.asked}>
        <div className={css.columns}>
          {children}
          <Readiness {...part} isFirst={children === undefined} isSettled={isSettled} />
          <Decision {...part} />
          {tests && <Age {...part} />}
          {tests && <Consents {...part} isSettled={isSettled} />}
        </div>
      </div>
      <div className={css.give}>
        {decisionOf(answers) === null && decider !== null && (
          <p className={`alert ${css.error}`} role="alert">
            {t(`worry.${decider}`)}
          </p>
        )}
        {refusal !== null && !bibRefusal && (
          <p className={`alert ${css.error}`} role="alert">
            {say(refusal)}
          </p>
        )}
        {tests && (
          <div data-part="bib" className={css.bib}>
            <NumberField
              label={bibLabel()}
              value={answers.bib ?? String(bib)}
              onChange={(typed) => set({ bib: typed })}
              maxLength={4}
              error={bibError(missing.has("bib"), bibRefusal)}
            />
          </div>
        )}
        <div data-part="go" className={css.go}>
          <p className={`small strong ${css.open}`} role="status">
            {missing.size > 0 && t("give.missing", { count: open })}
          </p>
          <Button
            // The eye goes to the open questions first.
            kind={open > 0 ? "quiet" : "primary"}
            size="large"
            type="submit"
            busy={busy}
            hint="Ctrl+Enter"
          >
            {goWords()}
          </Button>
        </div>
      </div>
    </form>
  );

  function bibError(isBad: boolean, refused: boolean): string | null {
    if (isBad) return t("give.badBib");
    return refused && refusal !== null ? say(refusal) : null;
  }
  function bibLabel(): string {
    if (answers.bib !== null) return t("give.bib");
    return hasBib ? t("give.own") : t("give.next");
  }
  function goWords(): string {
    if (!tests) return t("give.none");
    const given = (answers.bib ?? String(bib)).trim();
    if (missing.has("bib") || given === "") return t("give.goPlain");
    return hasBib ? t("give.change", { bib: given }) : t("give.go", { bib: given });
  }
}

/** Focuses the first fault; who somebody is comes before their answers. */
function focusFirstFault(form: HTMLFormElement | null): void {
  // The fields are marked with the next rendering, and the questions have asked for the focus before it.
  requestAnimationFrame(() => form?.querySelector<HTMLElement>("input[aria-invalid=true]")?.focus());
}

/**
 * Scrolls the focused part into sight, where there is not room for all. The radio buttons can't do it by themselves: they
 * lie in clipped boxes, which swallow their scroll margins.
 */
function keepInSight(element: Element): void {
  const part = element.closest<HTMLElement>("[data-part]");
  if (part !== null && part.dataset.part !== "bib" && part.dataset.part !== "go") {
    part.scrollIntoView({ block: "nearest" });
  }
}
