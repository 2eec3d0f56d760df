import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useDaySheets } from "../../../app/daySheets.ts";
import type { Paper } from "../../../app/saving.ts";
import { PaperActions } from "../../../parts/controls/PaperActions.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { forFile } from "../../../words/forFile.ts";

/** Where the organiser prints the steps of a hall's first set-up, or saves them. */
export function SetUpPaper({ isOn }: { readonly isOn: boolean }) {
  const { day } = useDaySheets();
  return day !== null && <Ways isOn={isOn} date={day.date} />;
}

function Ways({ isOn, date }: { readonly isOn: boolean; readonly date: string }) {
  const { t } = useTranslation("devices");
  const [paper, setPaper] = useState<Paper>("a4");
  return (
    <Section title={t("paper.heading")}>
      <p>{t(isOn ? "paper.on" : "paper.off")}</p>
      <Row gap={3} wrap>
        <PaperActions
          screen="devices"
          path="/print/set-up"
          paper={paper}
          onPaper={setPaper}
          fileName={`${forFile(`${t("paper.title")} ${date}`)}.pdf`}
          save={t("paper.save")}
          print={t("paper.print")}
        />
      </Row>
    </Section>
  );
}
