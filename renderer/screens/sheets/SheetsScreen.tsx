import { useTranslation } from "react-i18next";
import { Screen } from "../../parts/Screen.tsx";
import { ChooseSheet } from "./ChooseSheet.tsx";
import { Done } from "./Done.tsx";
import { Look } from "./Look.tsx";
import { Reading } from "./Reading.tsx";
import { Refused } from "./Refused.tsx";
import { SheetHead } from "./SheetHead.tsx";
import { useSheet } from "./useSheet.ts";

/** Taking in the leagues' sheets: choose one, look at what it would change, take it in. */
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
    </Screen>
  );
}
