import { useTranslation } from "react-i18next";
import { asksGuardian } from "../../../../electron/domain/people/questions.ts";
import { Choice } from "../../../parts/controls/Choice.tsx";
import css from "./AdmissionForm.module.css";
import type { FormPart } from "./useAnswers.ts";
import { YesNo } from "./YesNo.tsx";

interface ConsentsProps extends FormPart {
  /** True of somebody checked in already, who was asked today. */
  readonly isSettled: boolean;
}

/** Asks how the board may show the athlete, and about sharing. Nothing is preselected for a new athlete. */
export function Consents({ answers, known, set, missing, isSettled }: ConsentsProps) {
  const { t } = useTranslation("checkIn");
  return (
    <fieldset className={css.group}>
      <legend className={`lead ${css.legend}`}>
        {t(isSettled ? "consent.settled" : "consent.title")}
        {known.asked && !isSettled && (
          <span className={`small quiet ${css.aside}`}> {t("consent.before")}</span>
        )}
      </legend>
      {asksGuardian(answers, known) && <p className={css.note}>{t("consent.minor")}</p>}
      <div data-part="board" className={css.row} data-missing={missing.has("board")}>
        <span aria-hidden="true">{t("consent.board")}</span>
        <Choice
          label={t("consent.board")}
          hideLabel
          // Pressing Enter too soon shows and shares less, never more.
          options={(["hidden", "bib", "name"] as const).map((value) => ({
            value,
            label: t(`consent.${value}`),
          }))}
          value={answers.board}
          onChange={(board) => set({ board })}
          error={missing.has("board") ? t("consent.choose") : null}
        />
      </div>
      <YesNo
        part="share"
        label={t("consent.share")}
        yes={t("consent.shareYes")}
        no={t("consent.shareNo")}
        value={answers.share}
        onChange={(share) => set({ share })}
        error={missing.has("share") ? t("consent.choose") : null}
      />
      <p className={`small quiet ${css.aside}`}>{t("consent.shareMeans")}</p>
    </fieldset>
  );
}
