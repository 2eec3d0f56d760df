import { createInstance } from "i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import sentences from "../../../resources/locales/en/sentences.json" with { type: "json" };

const words = createInstance();
await words.init({
  lng: "en",
  ns: ["sentences"],
  defaultNS: "sentences",
  resources: { en: { sentences } },
  interpolation: { escapeValue: false },
  saveMissing: true,
  missingKeyHandler: (_languages, _namespace, key) => {
    throw new Error(`no words for ${key}`);
  },
  missingInterpolationHandler: (text) => {
    throw new Error(`a value is missing in: ${text}`);
  },
});

/** The English of a sentence, by the library the windows use; throws when the key or a value is missing. */
export function textOf({ key, values }: Sentence): string {
  return words.t(key, { ...values });
}
