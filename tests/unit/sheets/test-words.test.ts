import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { languages } from "../../../electron/domain/languages.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { testCalled } from "../../../electron/sheets/test-words.ts";

const locales = join(import.meta.dirname, "../../../resources/locales");

test.each(testCodes)("%s is known by its code and by what the screens call it", (code) => {
  expect(testCalled(code)).toBe(code);
  for (const language of languages) {
    const words = JSON.parse(readFileSync(join(locales, language, `${code}.json`), "utf8"));
    expect([testCalled(words.name), testCalled(words.ability)]).toEqual([code, code]);
  }
});

test.each([
  ["Push ups", "push-up"],
  ["PLANCHA", "core"],
  ["Quadrant Jump", "agility"],
  ["salto", "vertical"],
  ["sprint", undefined],
])("%s is %s", (text, code) => {
  expect(testCalled(text)).toBe(code);
});
