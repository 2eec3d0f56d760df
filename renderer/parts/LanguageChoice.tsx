import { useTranslation } from "react-i18next";
import { languages, setLanguage } from "../app/words.ts";
import css from "./LanguageChoice.module.css";

/** The languages there are, each in its own name; nothing where there is only one. */
export function LanguageChoice() {
  const { t, i18n } = useTranslation("common");
  if (languages.length < 2) return null;
  return (
    <select
      className={css.choice}
      aria-label={t("frame.language")}
      value={i18n.language}
      onChange={(event) => void setLanguage(event.target.value)}
    >
      {languages.map((language) => (
        <option key={language} value={language} lang={language}>
          {new Intl.DisplayNames([language], { type: "language" }).of(language) ?? language}
        </option>
      ))}
    </select>
  );
}
