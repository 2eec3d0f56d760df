import { languageFor, type Words, withPlurals } from "../../electron/domain/languages.ts";
import { begin } from "./light/texts.ts";

/** Of each file the build leaves in what the page shows (`shown-words.ts`). */
const files = import.meta.glob<Words>(
  [
    "../../resources/locales/*/{agility,core,endurance,push-up,vertical}.json",
    "../../resources/locales/*/{cautions,common,instructions,page,place,sentences,station}.json",
  ],
  { eager: true, import: "default" },
);

/** Loads the words, in the first of the browser's languages that we speak. */
export function setUpWords(): void {
  const words: Record<string, Record<string, Words>> = {};
  for (const [path, keys] of Object.entries(files)) {
    const [, language, namespace] = /\/([^/]+)\/([^/]+)\.json$/.exec(path) ?? [];
    if (language === undefined || namespace === undefined) continue;
    words[language] ??= {};
    words[language][namespace] = withPlurals(keys, language);
  }
  begin(words, languageFor(navigator.languages));
}
