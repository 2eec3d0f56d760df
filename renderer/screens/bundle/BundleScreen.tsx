import { useTranslation } from "react-i18next";
import { Screen } from "../../parts/Screen.tsx";

/** What leaves the room. */
export function BundleScreen() {
  const { t } = useTranslation("bundle");
  return (
    <Screen title={t("title")} ready>
      {null}
    </Screen>
  );
}
