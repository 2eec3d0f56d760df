import { useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { Progress } from "../../parts/Progress.tsx";
import type { Standing } from "./sheet.ts";

type InWork = Extract<Standing, { step: "bringing" | "reading" }>;

/** How far the reading is; a sheet that is read at once shows nothing. */
export function Reading({ standing }: { readonly standing: InWork }) {
  const { t, i18n } = useTranslation("sheets");
  const [late, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), 250);
    return () => clearTimeout(timer);
  }, []);
  if (!late) return null;
  if (standing.step === "bringing") return <Progress label={t("reading.label")} done={null} total={1} />;
  const { done, total } = standing;
  const words = t("reading.lines", {
    done: done.toLocaleString(i18n.language),
    total: total.toLocaleString(i18n.language),
  });
  return <Progress label={t("reading.label")} done={done} total={total} words={words} />;
}
