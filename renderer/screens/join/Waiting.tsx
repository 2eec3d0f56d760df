import { useTranslation } from "react-i18next";
import { Stack } from "../../parts/flow/Stack.tsx";
import css from "./Join.module.css";

/** Says that the organiser has to let this device in. */
export function Waiting({ name }: { readonly name: string }) {
  const { t } = useTranslation("join");
  return (
    <Stack gap={3} className={css.waiting} role="status">
      <p className="lead">{t("waiting.title")}</p>
      <p>{t("waiting.who", { name })}</p>
      <p>{t("waiting.what")}</p>
    </Stack>
  );
}
