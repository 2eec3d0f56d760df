import { useTranslation } from "react-i18next";
import type { Gain, Label } from "../../../electron/api/board/schemas.ts";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";

import { useTestWords } from "../../app/testWords.ts";

interface SaidGain {
  /** With its sign: a circuit's time goes down. */
  readonly number: string;
  /** "reps more", "s faster". */
  readonly words: string;
}

/** The words of a gain where its unit is no word of a key. */
const timeWords: Readonly<Record<string, string>> = { s: "seconds", "min:s": "time" };

/** How a gain is said: the number with its sign, and the test's own words, which hold without the sign. */
export function useGain(): (test: TestCode, gain: Gain) => SaidGain {
  const testWord = useTestWords();
  return (test, { number, unit }) => {
    const sign = protocolOf(test).better === "lower" ? "−" : "+";
    const words = testWord(test, `gain.${timeWords[unit] ?? unit}`, { count: Number(number) });
    return { number: `${sign}${number}`, words };
  };
}

/** A person of the board in words: the name they skate under, or their bib. */
export function useLabel(): (label: Label) => string {
  const { t } = useTranslation("board");
  return (label) => (label.as === "name" ? label.name : t("bib", { bib: label.bib }));
}

/** What the gains of a wall are counted in; times show it by their colon or their unit. */
export function useGainIn(): (unit: Written["unit"]) => string {
  const { t } = useTranslation("board");
  const { t: common } = useTranslation("common");
  return (unit) =>
    unit === "" || unit === "min:s" ? t("wall.inTime") : t("wall.inUnit", { unit: common(`unit.${unit}`) });
}

/** Names take less room a letter the longer they are, and have less of it beside long `figures`. */
export function roomFor(text: string, figures = ""): "short" | "medium" | "long" {
  const taken = Math.max(0, figures.length - 6);
  if (text.length <= 12 - taken) return "short";
  return text.length <= 22 - 3 * taken ? "medium" : "long";
}
