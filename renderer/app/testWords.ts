import { useTranslation } from "react-i18next";
import type { TestCode } from "../../electron/domain/tests/registry.ts";

/** The words that every test has in its own file (`resources/locales/<language>/<code>.json`); a test of the words checks it. */
export type TestWord =
  | "name"
  /** What it measures: "Strength". */
  | "ability"
  | "letter"
  /** "The push-ups come first." */
  | "blocked"
  /** What it means to skip it. */
  | "skip"
  /** Which way is up in a picture of its marks; `unit` is of its lengths. */
  | "up"
  /** "more is better" */
  | "better"
  /** What to work on, for a card. */
  | "hint"
  | `rules.${"setUp" | "run" | "counts" | "score" | "stop"}`;

/** A word of a test that not every test has: a label of its fields, choices, settings, columns, taps or gains. */
export type OwnWord = `${"field" | "choice" | "setting" | "column" | "tap" | "gain"}.${string}`;

type AnyKey = (key: string, values?: Record<string, unknown>) => string;

/** `const testWord = useTestWords(); testWord(test, "name")`: renders again when the language changes. */
export function useTestWords(): (
  test: TestCode,
  word: TestWord | OwnWord,
  values?: Readonly<Record<string, string | number>>,
) => string {
  const { t } = useTranslation();
  return (test, word, values = {}) => (t as unknown as AnyKey)(`${test}:${word}`, values);
}
