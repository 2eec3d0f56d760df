import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/Button.tsx";
import { EmptyState } from "../../parts/EmptyState.tsx";
import css from "./DayScreen.module.css";

/** What to do on a day that has nobody on its list. */
export function FirstSteps({ open }: { readonly open: boolean }) {
  const { t } = useTranslation(["day", "rehearsal"]);
  return (
    <EmptyState
      title={t("first.title")}
      steps={[t("first.sheets"), ...(open ? [] : [t("first.open")]), t("first.checkIn")]}
      action={
        <div className={css.ways}>
          <LinkButton to="/sheets" kind="primary">
            {t("first.go")}
          </LinkButton>
          {!open && <LinkButton to="/rehearsal">{t("rehearsal:link")}</LinkButton>}
        </div>
      }
    />
  );
}
