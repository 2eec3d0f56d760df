import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { type Language, languages } from "../../../electron/domain/languages.ts";
import { useTRPC } from "../../app/client.tsx";
import { chooseOwnLanguage } from "../../app/ownLanguage.ts";
import css from "./LanguageChoice.module.css";

/**
 * The other languages of the desk, each in its own name; its big screen and papers follow. Small, since it is in the
 * head while there is no day, and at the foot of every screen of a day.
 */
export function LanguageChoice() {
  const trpc = useTRPC();
  const { mutate } = useMutation(trpc.language.choose.mutationOptions());
  return <OtherLanguages onChoose={(language) => mutate({ language })} />;
}

/** The other languages of a device: nobody else's screen changes with it. */
export function OwnLanguageChoice() {
  return <OtherLanguages onChoose={chooseOwnLanguage} />;
}

/** The other languages; `onChoose` speaks one of them. */
export function OtherLanguages({ onChoose }: { readonly onChoose: (language: Language) => void }) {
  const { t, i18n } = useTranslation("common");
  return (
    <fieldset className={css.choice}>
      <legend className="unseen">{t("frame.language")}</legend>
      {languages
        .filter((language) => language !== i18n.language)
        .map((language, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the button that was pressed stays, and the keyboard on it
          <button key={place} type="button" lang={language} onClick={() => onChoose(language)}>
            {nameOf(language)}
          </button>
        ))}
    </fieldset>
  );
}

/** Returns a language's own name, capitalised: "Español". */
function nameOf(language: string): string {
  const name = new Intl.DisplayNames([language], { type: "language" }).of(language) ?? language;
  return name.charAt(0).toLocaleUpperCase(language) + name.slice(1);
}
