import { useEffect, useState } from "react";
import { createPortal } from "react-dom";
import { useTranslation } from "react-i18next";
import type { PageData } from "../../electron/domain/reference-table/page-data.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { type Paper, papers } from "../app/saving.ts";
import { Button } from "../parts/controls/Button.tsx";
import { Choice } from "../parts/controls/Choice.tsx";
import { Row } from "../parts/flow/Stack.tsx";
import { Section } from "../parts/layout/Panel.tsx";
import { Sheet } from "../screens/instructions/Sheet.tsx";
import { sheetsOf, type WhichSheets, whiches } from "../screens/instructions/sheets.ts";
import { useSheetTitle } from "../screens/instructions/useSheetTitle.ts";
import css from "./Page.module.css";

/** Minutes of rest between two tests that the sheets ask for; a day without settings has the same. */
const restMinutes = 5;

/** Prints the instruction sheets, by the rules of the table. */
export function Sheets({ data }: { readonly data: PageData }) {
  const { t } = useTranslation(["page", "common"]);
  const titleOf = useSheetTitle();
  const [paper, setPaper] = useState<Paper>("a4");
  const [which, setWhich] = useState<WhichSheets | null>(null);
  useEffect(() => {
    if (which === null) return;
    const over = () => setWhich(null);
    window.addEventListener("afterprint", over);
    window.print();
    return () => window.removeEventListener("afterprint", over);
  }, [which]);
  return (
    <Section title={t("sheets.title")}>
      <p className="measure">{t("sheets.lead")}</p>
      <Choice
        label={t("sheets.paper")}
        options={papers.map((each) => ({ value: each, label: t(`common:paper.${each}`) }))}
        value={paper}
        onChange={setPaper}
      />
      <Row gap={3} wrap>
        {whiches.map((each) => (
          <Button key={each} onPress={() => setWhich(each)}>
            {each === "all" ? t("sheets.all") : titleOf(each)}
          </Button>
        ))}
      </Row>
      {which !== null && createPortal(<Papers which={which} paper={paper} data={data} />, document.body)}
    </Section>
  );
}

interface PapersProps {
  readonly which: WhichSheets;
  readonly paper: Paper;
  readonly data: PageData;
}

/** The pages, which only paper shows; what is on the screen is then not printed. */
function Papers({ which, paper, data }: PapersProps) {
  const { t } = useTranslation("page");
  const day = {
    ...{ title: t("sheets.by", { publisher: data.publisher }), date: data.made, restMinutes },
    state: "open" as const,
  };
  const tests = testCodes.map((test) => ({ test, ...data.tests[test] }));
  return (
    <div className={css.papers}>
      {sheetsOf(which).map((name) => (
        <Sheet key={name} name={name} paper={paper} day={day} tests={tests} />
      ))}
    </div>
  );
}
