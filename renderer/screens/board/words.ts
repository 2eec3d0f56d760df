import { useTranslation } from "react-i18next";
import type { Gain, Label } from "../../../electron/api/board/schemas.ts";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { useShowNumber } from "../../words/numbers.ts";

interface SaidGain {
  /** "+3"; a time has no sign: "faster" and "longer" give the direction, and a minus before "faster" would deny it. */
  readonly number: string;
  /** "more reps", "seconds faster". */
  readonly words: string;
}

/** The keys of a gain's words, for units that are no part of a key. */
const timeWords: Readonly<Record<string, string>> = { s: "seconds", "min:s": "time" };

/** Formats a gain: the number, and the test's own words, which give its direction. */
export function useGain(): (test: TestCode, gain: Gain) => SaidGain {
  const testWord = useTestWords();
  const show = useShowNumber();
  return (test, { number, unit }) => {
    const timeWord = timeWords[unit];
    const words = testWord(test, `gain.${timeWord ?? unit}`, { count: Number(number) });
    return { number: timeWord === undefined ? `+${show(number)}` : show(number), words };
  };
}

/** Formats an athlete on the board: the name they skate under, or their bib. */
export function useLabel(): (label: Label) => string {
  const { t } = useTranslation("board");
  return (label) => (label.as === "name" ? label.name : t("bib", { bib: label.bib }));
}

/** Formats the unit of a wall's gains; for times, which have no sign, also their direction. */
export function useGainIn(): (test: TestCode, unit: Written["unit"]) => string {
  const { t } = useTranslation("board");
  const { t: common } = useTranslation("common");
  return (test, unit) => {
    if (unit !== "" && unit !== "min:s") return t("wall.inUnit", { unit: common(`unit.${unit}`) });
    return t(protocolOf(test).better === "lower" ? "wall.timeSaved" : "wall.timeGained");
  };
}

/** Returns the class of a text's length: long names have smaller letters, smaller still beside long `figures`. */
export function roomFor(text: string, figures = ""): "short" | "medium" | "long" {
  const taken = Math.max(0, figures.length - 6);
  if (text.length <= 12 - taken) return "short";
  return text.length <= 22 - 3 * taken ? "medium" : "long";
}
