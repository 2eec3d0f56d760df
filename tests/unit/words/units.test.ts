import i18next from "i18next";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { initReactI18next } from "react-i18next";
import { beforeAll, expect, test } from "vitest";
import { withPlurals } from "../../../electron/domain/languages.ts";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import { useMarkText, useWriteChange } from "../../../renderer/words/marks.ts";
import { filesOf } from "../word-files.ts";

beforeAll(async () => {
  const of = (language: string) =>
    Object.fromEntries([...filesOf(language)].map(([name, words]) => [name, withPlurals(words, language)]));
  const resources = { en: of("en"), es: of("es") } as Record<string, Record<string, Record<string, string>>>;
  await i18next.use(initReactI18next).init({ lng: "en", resources, interpolation: { escapeValue: false } });
});

/** What a component that uses the hook would show. */
const shown = (use: () => string) => renderToStaticMarkup(createElement(use));
const mark = (number: string, unit: Written["unit"]) => shown(() => useMarkText()({ number, unit }));

test("one of a unit is said as one, in both languages", async () => {
  expect([mark("1", "reps"), mark("2", "reps"), mark("0", "reps")]).toEqual(["1 rep", "2 reps", "0 reps"]);
  expect([mark("1", "landings"), mark("1.5", "landings")]).toEqual(["1 landing", "1.5 landings"]);
  expect([mark("1", "cm"), mark("3:21", "min:s")]).toEqual(["1 cm", "3:21"]);
  expect(shown(() => useWriteChange("push-up", "cm")(1))).toBe("+1 rep");
  // Agility counts in quarters of a landing.
  expect(shown(() => useWriteChange("agility", "cm")(-4))).toBe("−1 landing");
  await i18next.changeLanguage("es");
  expect([mark("1", "landings"), mark("2", "landings")]).toEqual(["1 apoyo", "2 apoyos"]);
});
