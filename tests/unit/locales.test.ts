import { globSync } from "node:fs";
import i18next from "i18next";
import { describe, expect, test } from "vitest";
import {
  languageFor,
  languages,
  localeOf,
  type Words,
  withPlurals,
} from "../../electron/domain/languages.ts";
import { filesOf, textsOf, valuesIn } from "./word-files.ts";

const english = textsOf(filesOf("en"));
const others = languages.filter((language) => language !== "en");

/** Forms of counted texts, by CLDR; `_zero` is i18next's own, for a count of 0 in any language. */
const form = /_(?:zero|one|two|few|many|other)$/;

/** Texts that Spanish and English rightly share: names, units, letters, single short words. */
const shared = new Set(
  "A,A4,A5,No,no,P,PIN,Reps,Tapeline,cm,ft,in,kg,lb,min:s,rep,reps,s".split(",").concat("OK"),
);

test("the languages that are offered are those that have a folder of words", () => {
  const folders = globSync("??", { cwd: new URL("../../resources/locales", import.meta.url).pathname });
  expect([...languages].sort()).toEqual(folders.sort());
});

describe.each(others)("%s", (language) => {
  const texts = textsOf(filesOf(language));

  test("no text is missing and none is left over", () => {
    expect([...english.keys()].filter((key) => !texts.has(key))).toEqual([]);
    const known = (key: string) => english.has(key) || english.has(key.replace(form, "_other"));
    expect([...texts.keys()].filter((key) => !known(key))).toEqual([]);
  });

  test("every text takes in the values that the English one does", () => {
    const strayed = [...texts].filter(([key, text]) => {
      // One may be said in words.
      const compared = (of: string) =>
        valuesIn(of).filter((name) => !key.endsWith("_one") || name !== "count");
      const original = english.get(key) ?? english.get(key.replace(form, "_other")) ?? "";
      return String(compared(text)) !== String(compared(original));
    });
    expect(strayed).toEqual([]);
  });

  test("no text is empty where the English one says something", () => {
    expect([...texts].filter(([key, text]) => text.trim() === "" && english.get(key) !== "")).toEqual([]);
  });

  test("no text is left in English", () => {
    const same = [...texts].filter(([key, text]) => text === english.get(key) && !shared.has(text));
    const wordless = (text: string) => !/\p{L}/u.test(text.replace(/\{\{\w+\}\}/g, ""));
    const units = /^(?:\{\{\w+\}\} (?:bytes?|ft \(\{\{metres\}\} m\)|min))$/;
    expect(same.filter(([, text]) => !wordless(text) && !units.test(text))).toEqual([]);
  });

  test("counted texts have every form of the language, and i18next finds the right one", async () => {
    const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
    const instance = i18next.createInstance();
    // Values stay as they are written, so that the texts can be held side by side.
    const asWritten = { prefix: "<<<", suffix: ">>>" };
    const whole = Object.fromEntries(
      [...filesOf(language)].map(([name, words]) => [name, withPlurals(words, language)]),
    );
    const resources = { [language]: whole as Record<string, Record<string, string>> };
    await instance.init({
      lng: language,
      fallbackLng: false,
      resources,
      interpolation: asWritten,
    });
    const complete = textsOf(new Map(Object.entries(whole as Record<string, Words>)));
    const counted = [...texts.keys()]
      .filter((key) => key.endsWith("_other"))
      .map((key) => key.replace(form, ""));
    expect(counted.length).toBeGreaterThan(100);
    for (const key of counted) {
      expect(forms.filter((each) => !complete.has(`${key}_${each}`))).toEqual([]);
      for (const count of [1, 2, 1_000_000]) {
        const expected = complete.get(`${key}_${new Intl.PluralRules(language).select(count)}`);
        expect(instance.t(key, { count })).toBe(expected);
      }
    }
  });
});

/** Spanish alone: words that no Spanish text has, so that half a sentence that was forgotten is found too. */
test("no Spanish text has an English word in it", () => {
  const codes =
    /(?:«\w+»|(?:Escribe|scribe no en|en) [^.]*\b(?:women|name|push-up|full|yes|finished|cm|cw|m:ss)\b[^.]*)/g;
  const titles = /Journal of Strength and Conditioning Research|Physical Therapy in Sport/g;
  const stray = new Set(
    "the and of you your with this that is are was not from for to it all bib day test mark board".split(" "),
  );
  const named = /--\w+|\w+\.(?:json|csv|zip|md)|npm run \w+|`[^`]*`|\{\{\w+\}\}/g;
  const found = [...textsOf(filesOf("es"))].filter(([, text]) =>
    (
      text
        .replace(named, "")
        .replace(codes, "")
        .replace(titles, "")
        .match(/\p{L}+/gu) ?? []
    ).some((word) => stray.has(word.toLowerCase())),
  );
  expect(found).toEqual([]);
});

/**
 * RAE and ASALE, Ortografía de la lengua española (2010), § on numbers: "un millón" and its multiples are nouns and take
 * "de" before what is counted; CLDR has the form `many` for them.
 */
test("a million is counted as Spanish counts it", () => {
  const spanish = textsOf(filesOf("es"));
  expect(new Intl.PluralRules("es").select(1_000_000)).toBe("many");
  expect(spanish.get("report:size_many")).toBe("{{shown}} de bytes");
  expect(spanish.get("bundle:count.bytes_many")).toBe("{{shown}} de bytes");
});

test("a form that is not written is said as the one for any other count", () => {
  const words = {
    rows_one: "una fila",
    rows_other: "filas",
    more: { of_one: "1", of_many: "m", of_other: "n" },
  };
  expect(withPlurals(words, "es")).toEqual({
    ...words,
    rows_many: "filas",
    more: { of_one: "1", of_many: "m", of_other: "n" },
  });
});

test.each([
  [["es-MX", "en-US"], "es"],
  [["de-DE", "es_ES", "en"], "es"],
  [["ES"], "es"],
  [["en-GB", "es"], "en"],
  [["de", "fr"], "en"],
  [[], "en"],
])("somebody whose system prefers %j begins in %s", (preferred, language) => {
  expect(languageFor(preferred)).toBe(language);
});

test("dates are written as the language does, in the day's own order", () => {
  expect(languages.map(localeOf)).toEqual(["en-GB", "es"]);
});
