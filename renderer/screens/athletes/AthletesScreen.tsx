import { useTranslation } from "react-i18next";
import { Screen } from "../../parts/Screen.tsx";

/** All athletes, or the one of `id`. */
export function AthletesScreen({ id }: { readonly id: string | null }) {
  const { t } = useTranslation("athletes");
  return (
    <Screen title={t("title")} ready>
      {id}
    </Screen>
  );
}
