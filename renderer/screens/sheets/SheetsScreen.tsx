import { useTranslation } from "react-i18next";
import { FileZone } from "../../parts/controls/FileZone.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import type { SheetState } from "../../parts/sheets/sheet.ts";
import { StepList } from "../../parts/steps/StepList.tsx";
import { writeNumber } from "../../words/numbers.ts";
import { Done } from "./Done.tsx";
import { Examples } from "./Examples.tsx";
import { Look } from "./Look.tsx";
import { Refused } from "./Refused.tsx";
import { SheetHead } from "./SheetHead.tsx";
import css from "./Sheets.module.css";
import { type SheetInHand, useSheet } from "./useSheet.ts";

/** Imports the leagues' sheets: choose one, look at what it would change, import it. */
export function SheetsScreen() {
  const { t } = useTranslation("sheets");
  const sheet = useSheet();
  const { standing } = sheet;
  return (
    <Screen title={t("title")} lead={standing.step === "none" ? t("lead") : undefined} ready>
      {standing.step === "none" ? <ChooseSheet sheet={sheet} /> : <SheetHead sheet={sheet} />}
      {(standing.step === "bringing" || standing.step === "reading") && <Reading standing={standing} />}
      {standing.step === "refused" && <Refused sentence={standing.sentence} sheet={sheet} />}
      {standing.step === "preview" && <Look preview={standing.preview} sheet={sheet} />}
      {standing.step === "taken" && <Done taken={standing.taken} sheet={sheet} />}
      {(standing.step === "none" || standing.step === "taken") && <StepList of="imports" />}
    </Screen>
  );
}

const readable = ".csv,.tsv,.txt,.xlsx,.xlsm,.ods,text/csv,text/tab-separated-values,text/plain";

/** Takes a sheet that is chosen or dropped, and explains the three kinds. */
function ChooseSheet({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  return (
    <div className={css.choose}>
      <FileZone
        size="large"
        title={t("choose.drop")}
        button={t("choose.button")}
        note={t("choose.note")}
        accept={readable}
        onFile={(name, content) => sheet.bring({ name, content })}
        onRefused={(name, why) =>
          sheet.refuse(name, why === "too-big" ? "sheets.tooBig" : "sheets:choose.unreadable")
        }
      />
      <Examples />
    </div>
  );
}

type InWork = Extract<SheetState, { step: "bringing" | "reading" }>;

/** Shows the progress of the reading. */
function Reading({ standing }: { readonly standing: InWork }) {
  const { t, i18n } = useTranslation("sheets");
  if (standing.step === "bringing") return <Progress label={t("reading.label")} done={null} total={1} />;
  const { done, total } = standing;
  const words = t("reading.lines", {
    done: writeNumber(done, i18n.language),
    total: writeNumber(total, i18n.language),
  });
  return <Progress label={t("reading.label")} done={done} total={total} words={words} />;
}
