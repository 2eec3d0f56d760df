import i18next from "i18next";
import sentences from "../../resources/locales/en/sentences.json" with { type: "json" };
import type { Sentence } from "../domain/words.ts";

const words = i18next.createInstance();
void words.init({
  lng: "en",
  ns: ["sentences"],
  defaultNS: "sentences",
  resources: { en: { sentences } },
  initAsync: false,
  interpolation: { escapeValue: false },
});

/** A sentence as English text, for sheets, logs and error messages; windows translate the sentence themselves. */
export function say(sentence: Sentence): string {
  return words.t(sentence.key, { ...sentence.values });
}
