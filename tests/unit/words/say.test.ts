import i18next from "i18next";
import { beforeAll, expect, test } from "vitest";
import { say as sayAtTheDoor } from "../../../electron/api/door/words.ts";
import { languages, withPlurals } from "../../../electron/domain/languages.ts";
import { sentence } from "../../../electron/domain/words.ts";
import { shellText, speakIn } from "../../../electron/shell/words.ts";
import { writeDate } from "../../../renderer/words/dates.ts";
import { inSentences, showNumber, writeNumber } from "../../../renderer/words/numbers.ts";
import { say } from "../../../renderer/words/say.ts";
import { filesOf } from "../word-files.ts";

beforeAll(async () => {
  const of = (language: string) =>
    Object.fromEntries([...filesOf(language)].map(([name, words]) => [name, withPlurals(words, language)]));
  const resources = { en: of("en"), es: of("es") } as Record<string, Record<string, Record<string, string>>>;
  const interpolation = { escapeValue: false, alwaysFormat: true };
  await i18next.use(inSentences).init({ lng: "en", fallbackLng: "en", resources, interpolation });
});

test.each([
  [sentence("day.badParameters", { test: "core" }), "Staged plank", "Plancha por etapas"],
  [
    sentence("marks.unreadableField", { field: "offAtEnd" }),
    "Missed reps at the end",
    "Repeticiones fallidas al final",
  ],
  [sentence("reference.contradicts", { test: "juggling" }), "juggling", "juggling"],
  [sentence("stages.later.one-arm", { round: 2 }), "round 2, one arm up", "ronda 2, un brazo arriba"],
  [sentence("heat.rests", { name: "Ox", count: 1 }), "has 1 minute of rest left.", "le queda 1 minuto"],
  [sentence("heat.rests", { name: "Ox", count: 2 }), "has 2 minutes of rest left.", "le quedan 2 minutos"],
])("%j is said in the window's language, with the words in it", async (said, english, spanish) => {
  await i18next.changeLanguage("en");
  expect(say(said)).toContain(english);
  await i18next.changeLanguage("es");
  expect(say(said)).toContain(spanish);
});

test("what people typed stays as they typed it", async () => {
  await i18next.changeLanguage("es");
  expect(say(sentence("station.leftOut.skip", { name: "core" }))).toBe(
    "core se salta esta prueba. La organización sabe por qué y puede deshacerlo.",
  );
});

test.each(languages)(
  "where no column has the league, the field that says it for all rows is named: %s",
  async (language) => {
    await i18next.changeLanguage(language);
    expect(say(sentence("sheets.missing.league"))).toContain(i18next.t("sheets:choices.league"));
  },
);

test("the door says its sentences in the language it is asked for, and English else", () => {
  const row = sentence("sheets.row.empty");
  expect([sayAtTheDoor(row), sayAtTheDoor(row, "es")]).toEqual([
    "This can't be left empty.",
    "Esto no se puede dejar vacío.",
  ]);
});

test("the shell follows the language of now", () => {
  let language: "en" | "es" = "es";
  speakIn(() => language);
  expect(shellText("recovery.lacks", { count: 1 })).toBe("Le falta 1 intento, anotado después.");
  expect(shellText("recovery.lacks", { count: 1_000_000 })).toContain("Le faltan 1000000 intentos");
  language = "en";
  expect(shellText("recovery.lacks", { count: 3 })).toContain("3 attempts");
});

/**
 * RAE and ASALE, Ortografía de la lengua española (2010), chapter on figures: the decimal mark may be a comma or a point;
 * groups of three are parted by a narrow space, from five figures on, and by neither of the two.
 */
test.each([
  ["en", 1234.5, "1,234.5"],
  ["es", 1234.5, "1234,5"],
  ["es", 12345.5, "12\u202f345,5"],
  ["es", -0.25, "-0,25"],
  ["es", 12, "12"],
])("in %s %d is written %s", (language, number, written) => {
  expect(writeNumber(number, language)).toBe(written);
});

test.each([
  ["29.5", "29,5"],
  ["6:12.4", "6:12,4"],
  ["−0:01.5", "−0:01,5"],
  ["+3.25 apoyos", "+3,25 apoyos"],
  ["3.00 s", "3,00 s"],
  ["24", "24"],
  // No numbers of ours.
  ["0.1.0", "0.1.0"],
  ["2026-03-14", "2026-03-14"],
  ["Route 4.5 crew of the harbour", "Route 4.5 crew of the harbour"],
])("%s is shown in Spanish as %s, and in English as it is", (text, spanish) => {
  expect([showNumber(text, "es"), showNumber(text, "en")]).toEqual([spanish, text]);
});

test("numbers in a sentence follow the language, and what people typed does not", async () => {
  await i18next.changeLanguage("es");
  expect(say(sentence("units.grain", { step: 0.25 }))).toContain("0,25");
  expect(say(sentence("units.time.ambiguous", { minutes: "3:00", seconds: "3.00 s" }))).toContain("3,00 s");
  expect(say(sentence("station.leftOut.skip", { name: "4.5" }))).toContain("4.5");
  await i18next.changeLanguage("en");
  expect(say(sentence("units.grain", { step: 0.25 }))).toContain("0.25");
});

test("dates are written as each language does", () => {
  // The comma came and went with versions of the ICU.
  expect(writeDate("2026-11-14", "en")).toMatch(/^Saturday,? 14 November 2026$/);
  expect(writeDate("2026-11-14", "es")).toBe("sábado, 14 de noviembre de 2026");
});
