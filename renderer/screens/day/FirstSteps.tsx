import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/Button.tsx";
import { EmptyState } from "../../parts/EmptyState.tsx";

/** What to do on a day that has nobody on its list. */
export function FirstSteps() {
  const { t } = useTranslation(["day", "common"]);
  return (
    <EmptyState
      title={t("day:first.title")}
      steps={[t("day:first.sheets"), t("day:first.open"), t("day:first.checkIn")]}
      action={
        <LinkButton to="/sheets" kind="primary">
          {t("common:place.sheets")}
        </LinkButton>
      }
    />
  );
}
