import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import type { Preview } from "./preview.ts";

/** Says that this store has no day yet. */
export function NoDay() {
  const { t } = useTranslation("bundle");
  return (
    <EmptyState
      title={t("empty.noDay")}
      steps={[t("empty.noDayStep1"), t("empty.noDayStep2"), t("empty.noDayStep3")]}
      action={
        <LinkButton kind="primary" to="/">
          {t("empty.noDayDo")}
        </LinkButton>
      }
    />
  );
}

/** Says why no mark of the day can be released: there are none, nobody agreed, or too few are alike. */
export function NothingToShare({ bundle: { held, k } }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const reasons = new Set(held.map(({ reason }) => reason));
  if (reasons.has("too-few")) return <TooFew two={2 * k} k={k} />;
  if (reasons.has("no-share") || reasons.has("no-guardian")) return <NoConsent k={k} />;
  return <EmptyState title={t("empty.noMarks")} steps={[t("empty.noMarksStep1"), t("empty.noMarksStep2")]} />;
}

function TooFew({ k, two }: { readonly k: number; readonly two: number }) {
  const { t } = useTranslation("bundle");
  return (
    <EmptyState
      title={t("empty.tooFew", { k })}
      steps={[t("empty.tooFewStep1"), t("empty.tooFewStep2"), t("empty.tooFewStep3")]}
      action={<LinkButton to="/athletes">{t("empty.tooFewDo")}</LinkButton>}
    >
      <p>{t("empty.tooFewWhy", { k, two })}</p>
    </EmptyState>
  );
}

function NoConsent({ k }: { readonly k: number }) {
  const { t } = useTranslation("bundle");
  return (
    <EmptyState
      title={t("empty.noConsent")}
      steps={[
        t("empty.noConsentStep1"),
        t("empty.noConsentStep2"),
        t("empty.noConsentStep3", { two: 2 * k }),
      ]}
      action={<LinkButton to="/athletes">{t("empty.noConsentDo")}</LinkButton>}
    />
  );
}
