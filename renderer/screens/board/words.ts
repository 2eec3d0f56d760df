import { useTranslation } from "react-i18next";
import type { Gain, Label } from "../../../electron/api/board/schemas.ts";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";

interface SaidGain {
  /** With its sign: a circuit's time goes down. */
  readonly number: string;
  /** "reps more", "s faster". */
  readonly words: string;
}

/** How a gain is said: the number with its sign, and words that hold without the sign. */
export function useGain(): (test: TestCode, gain: Gain) => SaidGain {
  const { t } = useTranslation("board");
  return (test, { number, unit }) => {
    const faster = protocolOf(test).better === "lower";
    const signed = `${faster ? "−" : "+"}${number}`;
    const count = Number(number);
    if (unit === "s") {
      return { number: signed, words: t(`gain.${faster ? "secondsFaster" : "secondsLonger"}`, { count }) };
    }
    if (unit === "min:s") return { number: signed, words: t(faster ? "gain.faster" : "gain.longer") };
    return { number: signed, words: t(`gain.${unit}`, { count }) };
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
