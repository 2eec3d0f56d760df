import { useTranslation } from "react-i18next";
import css from "./PinEntry.module.css";

/** How long the next try has to wait. It is told once; the seconds count down for the eyes alone. */
export function PinWait({ seconds }: { readonly seconds: number }) {
  const { t } = useTranslation("lock");
  if (seconds === 0) return null;
  return (
    <p className={css.wait}>
      {t("unlock.wait")} <strong aria-hidden="true">{t("unlock.seconds", { count: seconds })}</strong>
    </p>
  );
}
