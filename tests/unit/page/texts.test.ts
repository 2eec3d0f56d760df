import { readFileSync } from "node:fs";
import { createInstance } from "i18next";
import { expect, test } from "vitest";
import { withPlurals } from "../../../electron/domain/languages.ts";
import light, { begin } from "../../../renderer/page/light/texts.ts";
import { shownOf } from "../../../renderer/page/shown-words.ts";
import { inSentences } from "../../../renderer/words/numbers.ts";

type Words = { readonly [key: string]: string | Words };
const languages = ["en", "es"] as const;
const folder = new URL("../../../resources/locales/", import.meta.url);

/** The files of which the page shows words. */
const files =
  "agility core endurance push-up vertical cautions common instructions page place sentences station".split(
    " ",
  );

function wordsOf(language: string): Record<string, Words> {
  return Object.fromEntries(
    files.map((name) => {
      const text = readFileSync(new URL(`${language}/${name}.json`, folder), "utf8");
      return [name, withPlurals(JSON.parse(shownOf(name, text)), language) as Words];
    }),
  );
}

/** Every key of a file with its text, and of counted ones without the ending for the number. */
function keysOf(words: Words, before = ""): [key: string, text: string][] {
  return Object.entries(words).flatMap(([key, part]): [string, string][] =>
    typeof part === "string" ? [[`${before}${key}`, part]] : keysOf(part, `${before}${key}.`),
  );
}

const resources = Object.fromEntries(languages.map((language) => [language, wordsOf(language)]));

// The library that the windows use is the measure: what stands in its place in the page says the same of every text.
test.each(languages)(
  "every text in %s is filled in as the windows' library fills it in",
  async (language) => {
    const library = createInstance();
    library.use(inSentences);
    await library.init({
      ...{
        lng: language,
        fallbackLng: "en",
        resources,
        defaultNS: "common",
        ns: Object.keys(resources.en ?? {}),
      },
      interpolation: { escapeValue: false, alwaysFormat: true },
    });
    begin(resources, language);
    let [compared, different] = [0, [] as string[]];
    for (const [namespace, words] of Object.entries(resources[language] ?? {})) {
      for (const [key, text] of keysOf(words)) {
        // A colon parts the file's name from the key: no text is asked for by such a key.
        if (key.includes(":")) continue;
        const names = [...text.matchAll(/\{\{\s*(\w+)\s*\}\}/g)].map(([, name = ""]) => name);
        for (const count of [0, 1, 2, 1234]) {
          const values = Object.fromEntries(
            [...names, "count"].map((name, at) => [name, at % 2 === 0 ? count : "x"]),
          );
          const asked = { ...values, count };
          const plain = key.replace(/_(one|other|many)$/, "");
          const [ours, theirs] = [light, library].map((each) =>
            String(
              (each.getFixedT as (l: null, n: string) => (k: string, v: object) => string)(null, namespace)(
                plain,
                asked,
              ),
            ),
          );
          compared += 1;
          if (ours !== theirs) different.push(`${namespace}:${plain} ${count}: ${ours} / ${theirs}`);
        }
      }
    }
    expect(compared).toBeGreaterThan(1000);
    expect(different.slice(0, 10)).toEqual([]);
  },
);
