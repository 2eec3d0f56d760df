import { useTranslation } from "react-i18next";
import css from "./PinEntry.module.css";

/** Shows the wait before the next try. It is read out once; the seconds only count down visually. */
export function PinWait({ seconds }: { readonly seconds: number }) {
  const { t } = useTranslation("lock");
  if (seconds === 0) return null;
  return (
    <p className={css.wait}>
      {t("unlock.wait")} <strong aria-hidden="true">{t("unlock.seconds", { count: seconds })}</strong>
    </p>
  );
}
