import { useTranslation } from "react-i18next";
import { writeNumber } from "../../app/numbers.ts";
import { Progress } from "../../parts/Progress.tsx";
import type { Standing } from "./sheet.ts";

type InWork = Extract<Standing, { step: "bringing" | "reading" }>;

/** How far the reading is. */
export function Reading({ standing }: { readonly standing: InWork }) {
  const { t, i18n } = useTranslation("sheets");
  if (standing.step === "bringing") return <Progress label={t("reading.label")} done={null} total={1} />;
  const { done, total } = standing;
  const words = t("reading.lines", {
    done: writeNumber(done, i18n.language),
    total: writeNumber(total, i18n.language),
  });
  return <Progress label={t("reading.label")} done={done} total={total} words={words} />;
}
