import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { languages } from "../../electron/domain/languages.ts";
import { useTRPC } from "../app/client.tsx";
import css from "./LanguageChoice.module.css";

/** The languages there are, each in its own name: the desk's, its board's and its papers'. */
export function LanguageChoice() {
  const { t, i18n } = useTranslation("common");
  const trpc = useTRPC();
  const { mutate } = useMutation(trpc.language.choose.mutationOptions());
  return (
    <fieldset className={css.choice}>
      <legend className="unseen">{t("frame.language")}</legend>
      {languages.map((language) => (
        <button
          key={language}
          type="button"
          lang={language}
          aria-pressed={language === i18n.language}
          onClick={() => mutate({ language })}
        >
          {nameOf(language)}
        </button>
      ))}
    </fieldset>
  );
}

/** A language's name in itself, as it stands alone: "Español". */
function nameOf(language: string): string {
  const name = new Intl.DisplayNames([language], { type: "language" }).of(language) ?? language;
  return name.charAt(0).toLocaleUpperCase(language) + name.slice(1);
}
