import { useTranslation } from "react-i18next";
import type { DaySheets } from "../../app/daySheets.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Cautions } from "../../parts/layout/Cautions.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { faceOf, readParameters, useTexts } from "../../tests/registry.ts";
import { Help } from "./Help.tsx";
import { Part, Points } from "./Part.tsx";
import css from "./Sheet.module.css";

/** Lays out the athletes' page: all tests, and how to prepare. resources/locales/README.md names safety's sources. */
export function AthleteSheet({ day, tests }: DaySheets) {
  const { t } = useTranslation("instructions");
  const textsOf = useTexts();
  const testWord = useTestWords();
  return (
    <div className={css.athlete}>
      <p className={css.lead}>
        {t("athlete.lead")} {day.restMinutes > 0 && t("athlete.rest", { count: day.restMinutes })}
      </p>
      <ol className={css.battery}>
        {tests.map(({ test, parameters }, index) => (
          <li key={test} className={css.asked} data-test={test}>
            <TestMark test={test} size="large" />
            <div>
              <h2>
                {index + 1} {testWord(test, "name")} <small>{testWord(test, "better")}</small>
              </h2>
              <p>{faceOf(test).asks(textsOf(test), readParameters(test, parameters))}</p>
            </div>
          </li>
        ))}
      </ol>
      <div className={css.columns}>
        <div className={css.column}>
          <Part title={t("athlete.prepare.title")}>
            <Points
              look="boxes"
              lines={[
                t("athlete.prepare.fresh"),
                t("athlete.prepare.warm"),
                t("athlete.prepare.tell"),
                t("athlete.prepare.guardian"),
                t("athlete.prepare.water"),
              ]}
            />
          </Part>
        </div>
        <div className={css.column}>
          <Part title={t("athlete.during.title")}>
            <Points
              lines={[
                t("athlete.during.called"),
                t("athlete.during.warm"),
                t("athlete.during.variant"),
                t("athlete.during.practice"),
                t("athlete.during.skip"),
              ]}
            />
          </Part>
          <Part title={t("athlete.after.title")}>
            <Points lines={[t("athlete.after.compare"), t("athlete.after.often")]} />
          </Part>
        </div>
      </div>
      <Cautions />
      <Help />
    </div>
  );
}
