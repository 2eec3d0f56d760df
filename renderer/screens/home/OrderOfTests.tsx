import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/protocols/protocol.ts";
import { TestMark } from "../../parts/TestMark.tsx";
import css from "./OrderOfTests.module.css";

/** The five tests along one painted line, in the order in which a day holds them. */
export function OrderOfTests() {
  const { t } = useTranslation(["home", "common"]);
  return (
    <section aria-label={t("home:order.title")}>
      <ol className={css.line}>
        {testCodes.map((test) => (
          <li key={test} data-test={test}>
            <TestMark test={test} size="hero" look="painted" />
            <span className={css.name}>{t(`common:test.${test}.name`)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
