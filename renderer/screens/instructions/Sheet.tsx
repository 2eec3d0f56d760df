import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import type { DaySheets, HeldTest } from "../../app/daySheets.ts";
import { useTestWords } from "../../app/testWords.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { Ticks } from "../../parts/marks/Ticks.tsx";
import { useRulesLine } from "../../tests/useRulesLine.ts";
import { writeDate } from "../../words/dates.ts";
import { AthleteSheet } from "./AthleteSheet.tsx";
import css from "./Sheet.module.css";
import { StationSheet } from "./StationSheet.tsx";
import type { Paper, SheetName } from "./sheets.ts";

interface SheetProps extends DaySheets {
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
      <p className={css.day}>
        <strong>{day.title}</strong>
        <span>{writeDate(day.date, i18n.language)}</span>
      </p>
      <Ticks />
    </header>
  );
}

/** Prints the settings that the page was made with, so that an old page is noticed. */
function Foot({ day, held }: { readonly day: SheetProps["day"]; readonly held: readonly HeldTest[] }) {
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
