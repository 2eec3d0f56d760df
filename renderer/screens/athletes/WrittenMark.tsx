import { useTranslation } from "react-i18next";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import css from "./Series.module.css";

/** A mark in a row: the number strong, the unit small. */
export function WrittenMark({ written: { number, unit } }: { readonly written: Written }) {
  const { t } = useTranslation("common");
  return (
    <>
      <strong>{number}</strong>
      {unit !== "" && unit !== "min:s" && <span className={css.quiet}> {t(`unit.${unit}`)}</span>}
    </>
  );
}
