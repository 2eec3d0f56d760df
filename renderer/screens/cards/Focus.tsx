import { useId } from "react";
import { useTranslation } from "react-i18next";
import { TestMark } from "../../parts/TestMark.tsx";
import css from "./After.module.css";
import type { CardData } from "./which.ts";

/** What to work on until the next test, why, and a first idea how. */
export function Focus({ focus }: { readonly focus: CardData["focus"] }) {
  const { t } = useTranslation(["cards", "common"]);
  const id = useId();
  return (
    <section className={css.part} aria-labelledby={id}>
      <h2 id={id}>{t("card.focus.title")}</h2>
      {focus.kind === "test" ? (
        <>
          <p className={css.chief}>
            <TestMark test={focus.test} size="small" name="ability" />
          </p>
          <p>
            {t(`card.focus.${focus.by}`)} {t(`card.hint.${focus.test}`)}
          </p>
        </>
      ) : (
        <>
          <p className={css.chief}>{t("card.focus.even")}</p>
          <p>
            {t(`card.focus.${focus.why}`)} {t("card.hint.even")}
          </p>
        </>
      )}
    </section>
  );
}
