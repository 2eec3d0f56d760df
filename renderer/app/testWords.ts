import { useTranslation } from "react-i18next";
import type { TestCode } from "../../electron/domain/tests/registry.ts";

/** The words that every test has in its own file (`resources/locales/<language>/<code>.json`); a test checks them. */
export type TestWord =
  | "name"
  /** The name inside a sentence: "the quadrant jump". */
  | "inText"
  /** The ability it measures: "Strength". */
  | "ability"
  /** Both, where somebody chooses a station: "Strength: cadence push-up". */
  | "station"
  | "letter"
  /** "The push-ups come first." */
  /** The consequence of skipping it. */
  | "skip"
  /** The better direction in a plot of its marks; `unit` is that of its lengths. */
  | "up"
  /** "more is better" */
  | "better"
  /** The training hint on a card. */
  | "hint"
  | `rules.${"setUp" | "run" | "counts" | "score" | "stop"}`;

/** A word that only some tests have: a label of fields, choices, settings, columns, taps or gains. */
export type OwnWord = `${"field" | "choice" | "setting" | "column" | "tap" | "gain"}.${string}`;

type AnyKey = (key: string, values?: Record<string, unknown>) => string;

/** Returns the reader of tests' words: `testWord(test, "name")`. Renders again with the language. */
export function useTestWords(): (
  test: TestCode,
  word: TestWord | OwnWord,
  values?: Readonly<Record<string, string | number>>,
) => string {
  const { t } = useTranslation();
  return (test, word, values = {}) => (t as unknown as AnyKey)(`${test}:${word}`, values);
}
