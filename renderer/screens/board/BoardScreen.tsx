import { useTranslation } from "react-i18next";
import { useReady } from "../../app/ready.ts";

/** The hall's board. */
export function BoardScreen() {
  const { t } = useTranslation("board");
  useReady(true);
  return (
    <main>
      <h1>{t("title")}</h1>
    </main>
  );
}
