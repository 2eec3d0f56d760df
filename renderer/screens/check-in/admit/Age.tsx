import { useTranslation } from "react-i18next";
import { asksGuardian } from "../../../../electron/domain/people/questions.ts";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import css from "./AdmissionForm.module.css";
import type { FormPart } from "./useAnswers.ts";
import { YesNo } from "./YesNo.tsx";

/** Asks whether the athlete is under 18, and then for the guardian's consent. Asks nothing of a known adult. */
export function Age({ answers, known, set, missing }: FormPart) {
  const { t } = useTranslation("checkIn");
  const asks = asksGuardian(answers, known);
  if (known.birthYear !== null && !asks) return null;
  return (
    <div className={css.age}>
      {known.birthYear === null && (
        <YesNo
          part="under18"
          label={t("age.under18")}
          yes={t("readiness.yes")}
          no={t("readiness.no")}
          value={answers.under18}
          onChange={(under18) => set({ under18 })}
          error={missing.has("under18") ? t("age.answer") : null}
        />
      )}
      {known.birthYear === null && answers.under18 === true && (
        <div data-part="birthYear" className={css.year}>
          <NumberField
            label={t("age.birthYear")}
            value={answers.birthYear}
            onChange={(birthYear) => set({ birthYear })}
            maxLength={4}
            error={missing.has("birthYear") ? t("age.birthYearMissing") : null}
          />
        </div>
      )}
      {asks && (
        <YesNo
          part="guardian"
          label={t("age.guardian")}
          yes={t("age.seen")}
          no={t("age.notSeen")}
          value={answers.guardian}
          onChange={(guardian) => set({ guardian })}
          error={missing.has("guardian") || answers.guardian === false ? t("age.needed") : null}
        />
      )}
    </div>
  );
}
