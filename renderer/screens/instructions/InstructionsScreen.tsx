import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import type { DaySheets } from "../../app/daySheets.ts";
import { useDaySheets } from "../../app/daySheets.ts";
import type { Paper } from "../../app/saving.ts";
import { useTestWords } from "../../app/testWords.ts";
import { PaperActions } from "../../parts/controls/PaperActions.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { ChoiceLink, ChoiceList } from "../../parts/layout/ChoiceList.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./Instructions.module.css";
import { Sheet } from "./Sheet.tsx";
import { sheetsOf, type WhichSheets, whiches } from "./sheets.ts";
import { useSheetTitle } from "./useSheetTitle.ts";

/** Selects one or all instruction sheets, shows the paper, and prints or saves it. */
export function InstructionsScreen({ which: asked }: { readonly which: string | null }) {
  const { t } = useTranslation("instructions");
  const { sheets, noDay, tests } = useDaySheets();
  const [paper, setPaper] = useState<Paper>("a4");
  const which = whiches.find((each) => each === (asked ?? "all"));
  if (noDay) return <Redirect to="/" />;
  if (which === undefined) return <Redirect to="/instructions" />;
  return (
    <Screen
      title={t("title")}
      lead={t("lead")}
      ready={sheets !== null || tests.isError}
      {...(sheets !== null && {
        actions: <Paperwork which={which} paper={paper} setPaper={setPaper} date={sheets.day.date} />,
      })}
    >
      <Answer query={tests}>
        {() => sheets !== null && <Desk which={which} paper={paper} sheets={sheets} />}
      </Answer>
    </Screen>
  );
}

interface PaperworkProps {
  readonly which: WhichSheets;
  readonly paper: Paper;
  readonly setPaper: (paper: Paper) => void;
  /** The date of the day, for the file's name. */
  readonly date: string;
}

/** Selects the paper, and prints or saves the sheets. */
function Paperwork({ which, paper, setPaper, date }: PaperworkProps) {
  return (
    <PaperActions
      screen="instructions"
      path={`/print/instructions/${which}`}
      paper={paper}
      onPaper={setPaper}
      fileName={useFileName(which, paper, date)}
      printsFirst
    />
  );
}

interface DeskProps {
  readonly which: WhichSheets;
  readonly paper: Paper;
  readonly sheets: DaySheets;
}

/** Shows the selection on the left and the paper on the right. */
function Desk({ which, paper, sheets }: DeskProps) {
  const { t } = useTranslation("instructions");
  return (
    <div className={css.desk}>
      <div className={css.choice}>
        <WhichSheet which={which} />
        {sheets.day.state === "planned" && <p className={css.planned}>{t("planned")}</p>}
      </div>
      <div className={css.papers} data-many={which === "all"}>
        {sheetsOf(which).map((name) => (
          <div key={name} className={css.paper}>
            <Sheet name={name} paper={paper} {...sheets} />
          </div>
        ))}
      </div>
    </div>
  );
}

function WhichSheet({ which }: { readonly which: WhichSheets }) {
  const { t } = useTranslation("instructions");
  const titleOf = useSheetTitle();
  return (
    <nav aria-label={t("which")}>
      <ChoiceList>
        {whiches.map((each) => (
          <ChoiceLink
            key={each}
            to={each === "all" ? "/instructions" : `/instructions/${each}`}
            current={each === which}
          >
            <span className={css.sign}>
              {each !== "all" && each !== "athlete" && <TestMark test={each} size="small" />}
            </span>
            {titleOf(each)}
          </ChoiceLink>
        ))}
      </ChoiceList>
    </nav>
  );
}

function useFileName(which: WhichSheets, paper: Paper, date: string): string {
  const { t } = useTranslation(["instructions", "common"]);
  const testWord = useTestWords();
  const values = { date, paper: t(`common:paper.${paper}`) };
  if (which === "all" || which === "athlete") return t(`file.${which}`, values);
  const test = testWord(which, "name");
  return t("file.station", { ...values, number: testCodes.indexOf(which) + 1, test });
}
