import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/Button.tsx";
import { EmptyState } from "../../parts/EmptyState.tsx";

/** What to do on a day that has nobody on its list. */
export function FirstSteps({ open }: { readonly open: boolean }) {
  const { t } = useTranslation("day");
  return (
    <EmptyState
      title={t("first.title")}
      steps={[t("first.sheets"), ...(open ? [] : [t("first.open")]), t("first.checkIn")]}
      action={
        <LinkButton to="/sheets" kind="primary">
          {t("first.go")}
        </LinkButton>
      }
    />
  );
}
