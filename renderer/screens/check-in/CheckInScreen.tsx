import { useTranslation } from "react-i18next";
import { Screen } from "../../parts/Screen.tsx";

/** Finding people and giving bibs. */
export function CheckInScreen() {
  const { t } = useTranslation("checkIn");
  return (
    <Screen title={t("title")} ready>
      {null}
    </Screen>
  );
}
