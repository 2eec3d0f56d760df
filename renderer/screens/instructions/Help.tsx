import { useTranslation } from "react-i18next";
import css from "./Help.module.css";

/** Leaves lines to fill in by hand: where help is differs from hall to hall, and nobody should have to ask in need. */
export function Help() {
  const { t } = useTranslation("instructions");
  const lines = [t("help.firstAid"), t("help.defibrillator"), t("help.number")];
  return (
    <div className={css.help}>
      {lines.map((line) => (
        <p key={line} className={`strong ${css.line}`}>
          {line}
        </p>
      ))}
    </div>
  );
}
