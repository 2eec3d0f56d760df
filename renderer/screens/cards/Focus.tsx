import { useId } from "react";
import { useTranslation } from "react-i18next";
import { useTestWords } from "../../app/testWords.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./After.module.css";
import type { CardData } from "./which.ts";

/** Names what to work on until the next test, the reason, and a first idea how. */
export function Focus({ focus }: { readonly focus: CardData["focus"] }) {
  const { t } = useTranslation(["cards", "common"]);
  const testWord = useTestWords();
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
            {t(`card.focus.${focus.by}`)} {testWord(focus.test, "hint")}
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
