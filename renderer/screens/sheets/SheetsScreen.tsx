import { useTranslation } from "react-i18next";
import { Screen } from "../../parts/Screen.tsx";

/** Taking in the leagues' sheets. */
export function SheetsScreen() {
  const { t } = useTranslation("sheets");
  return (
    <Screen title={t("title")} ready>
      {null}
    </Screen>
  );
}
