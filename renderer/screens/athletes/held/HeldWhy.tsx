import { useTranslation } from "react-i18next";
import css from "./HeldPage.module.css";

/** Why each thing is held, for how long, and how it leaves. */
export function HeldWhy() {
  const { t } = useTranslation("held");
  const reasons = ["name", "birth", "consent", "marks", "keyed", "long", "erase"] as const;
  return (
    <section className={css.day}>
      <h2>{t("page.why")}</h2>
      <ul className={css.heats}>
        {reasons.map((reason) => (
          <li key={reason}>{t(`page.reason.${reason}`)}</li>
        ))}
      </ul>
      <p>{t("page.machine")}</p>
    </section>
  );
}
