import type { TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocols } from "../../../electron/domain/tests/registry.ts";
import { Cautions } from "../../parts/Cautions.tsx";
import { TestMark } from "../../parts/TestMark.tsx";
import { numbersOf } from "../../words/ruleNumbers.ts";
import { Part, Points } from "./Part.tsx";
import css from "./Sheet.module.css";
import type { DaySheets } from "./sheets.ts";

/** The body of the athletes' page: the whole battery, and how to come to it. */
export function AthleteSheet({ day, tests }: DaySheets) {
  const { t } = useTranslation(["instructions", "station", "common"]);
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
                {index + 1} {t(`common:test.${test}.name`)} <small>{t(`athlete.mark.${test}`)}</small>
              </h2>
              <p>{asks(t, test, parameters)}</p>
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
    </div>
  );
}

/** What a test asks of an athlete, in a sentence or two. */
function asks(
  t: TFunction<["instructions", "station", "common"]>,
  test: TestCode,
  parameters: unknown,
): string {
  const numbers = numbersOf(test, parameters);
  switch (test) {
    case "push-up":
      return t("athlete.asks.push-up", numbers);
    case "agility":
      return t("athlete.asks.agility", numbers);
    case "vertical":
      return t("athlete.asks.vertical", { count: protocols[test].parameters.parse(parameters).trials });
    case "core":
      return t("athlete.asks.core", numbers);
    case "endurance": {
      const { rounds, exercises } = protocols[test].parameters.parse(parameters);
      const parts = exercises.map(({ exercise, count }) => t(`station:exercise.${exercise}`, { count }));
      return t("athlete.asks.endurance", { count: rounds, parts: parts.join(", ") });
    }
  }
}
