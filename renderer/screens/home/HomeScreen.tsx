import { useTranslation } from "react-i18next";
import { useReady } from "../../app/ready.ts";

/** The first screen: nothing is open yet. */
export function HomeScreen() {
  const { t } = useTranslation("home");
  useReady(true);
  return (
    <main>
      <h1>{t("title")}</h1>
    </main>
  );
}
