import i18next from "i18next";
import shell from "../../resources/locales/en/shell.json" with { type: "json" };
import type { Sentence } from "../domain/words.ts";

const words = i18next.createInstance();
void words.init({
  lng: "en",
  ns: ["shell"],
  defaultNS: "shell",
  resources: { en: { shell } },
  initAsync: false,
  // The page that shows the text escapes it.
  interpolation: { escapeValue: false },
});

/** One of the shell's own texts, from `shell.json`. */
export function shellText(key: string, values?: Sentence["values"]): string {
  return words.t(key, { ...values });
}
