import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import type { DaySheets, HeldTest } from "../../app/daySheets.ts";
import type { Paper } from "../../app/saving.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Cautions } from "../../parts/layout/Cautions.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { Ticks } from "../../parts/marks/Ticks.tsx";
import { faceOf, readParameters, useTexts } from "../../tests/registry.ts";
import { useRulesLine } from "../../tests/useRulesLine.ts";
import { writeDate } from "../../words/dates.ts";
import { Help } from "./Help.tsx";
import { Part, Points } from "./Part.tsx";
import css from "./Sheet.module.css";
import { StationSheet } from "./StationSheet.tsx";
import type { SheetName } from "./sheets.ts";

/** What a page needs of a day and its tests, and of whatever else it is printed for. */
interface Printed {
  readonly day: Pick<DaySheets["day"], "title" | "date" | "state" | "restMinutes">;
  readonly tests: readonly Pick<HeldTest, "test" | "parameters" | "standard">[];
}

interface SheetProps extends Printed {
  readonly name: SheetName;
  readonly paper: Paper;
}

/** Lays out one page at its paper's size, on the screen as in print. */
export function Sheet({ name, paper, day, tests }: SheetProps) {
  const held = tests.filter(({ test }) => name === "athlete" || test === name);
  const [station] = held;
  return (
    <article className={`${css.sheet} print-sheet`} data-paper={paper} data-test={name}>
      <Head name={name} day={day} />
      {name === "athlete" || station === undefined ? (
        <AthleteSheet day={day} tests={tests} />
      ) : (
        <StationSheet test={station.test} parameters={station.parameters} />
      )}
      <Foot day={day} held={held} />
    </article>
  );
}

function Head({ name, day }: Pick<SheetProps, "name" | "day">) {
  const { t, i18n } = useTranslation(["instructions", "common"]);
  const testWord = useTestWords();
  return (
    <header className={css.head}>
      {name !== "athlete" && <TestMark test={name} size="large" />}
      <div className={css.heading}>
        <h1>{name === "athlete" ? t("athlete.title") : testWord(name, "name")}</h1>
        {name !== "athlete" && (
          <p>
            {testWord(name, "ability")},{" "}
            {t("head.of", { number: testCodes.indexOf(name) + 1, count: testCodes.length })}
          </p>
        )}
      </div>
      <p className="print-day">
        <strong>{day.title}</strong>
        <span>{writeDate(day.date, i18n.language)}</span>
      </p>
      <Ticks />
    </header>
  );
}

/** Prints the settings that the page was made with, so that an old page is noticed. */
function Foot({ day, held }: { readonly day: Printed["day"]; readonly held: Printed["tests"] }) {
  const { t } = useTranslation(["instructions", "common"]);
  const rulesLine = useRulesLine();
  const standard = held.every((each) => each.standard);
  const [one] = held;
  return (
    <footer className="print-foot">
      <span>
        {day.state === "planned" ? t("foot.planned") : standard ? t("foot.standard") : t("foot.changed")}
        {held.length === 1 && one !== undefined && <>: {rulesLine(one.test, one.parameters)}</>}
      </span>
      <span className={css.maker}>{t("common:name")}</span>
    </footer>
  );
}

/**
 * Lays out the athletes' page: all tests, and how to prepare. Its safety texts' sources: resources/locales/README.md.
 */
function AthleteSheet({ day, tests }: Printed) {
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
