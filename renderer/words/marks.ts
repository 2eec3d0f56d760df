import { useTranslation } from "react-i18next";
import type { LengthUnit, Written } from "../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../electron/domain/tests/registry.ts";
import { useShowNumber } from "./numbers.ts";

/**
 * Returns the word of a unit beside a number ("1 rep", "2 reps"), or of many where none is given; empty where the number
 * itself shows that it is a time.
 */
export function useUnitWord(): (unit: Written["unit"], number?: string) => string {
  const { t } = useTranslation("common");
  return (unit, number = "") => {
    if (unit === "" || unit === "min:s") return "";
    return number === "" ? t(`unit.${unit}`) : t(`counted.${unit}`, { count: Number(number) });
  };
}

/** Formats a mark as a short text with its unit where needed: "24 reps", "43 cm", "3:21". */
export function useMarkText(): (written: Written) => string {
  const unitWord = useUnitWord();
  const show = useShowNumber();
  return ({ number, unit }) => `${show(number)} ${unitWord(unit, number)}`.trimEnd();
}

/** Returns a variant's name, "on the knees"; empty where there is only one. */
export function useVariantName(): (variant: string) => string {
  const { t } = useTranslation("common");
  return (variant) => (variant === "full" || variant === "knee" ? t(`variant.${variant}`) : variant);
}

/** Returns `useMarkText` for a value in grains. */
export function useWriteValue(test: TestCode, lengths: LengthUnit): (value: number) => string {
  const markText = useMarkText();
  return (value) => markText(protocolOf(test).write(value, lengths));
}

/**
 * Describes a change (positive is better; only its sign counts) in words that show which way is good: "+3 reps", "0:12
 * longer". `number` is its formatted amount.
 */
export function useChangeText(): (test: TestCode, change: number, number: string) => string {
  const { t } = useTranslation("station");
  return (test, change, number) => {
    const { grain, better } = protocolOf(test);
    if (grain.unit !== "s") return t("change.plain", { sign: change > 0 ? "+" : "−", number });
    if (better === "lower") return t(change > 0 ? "change.faster" : "change.slower", { number });
    return t(change > 0 ? "change.longer" : "change.shorter", { number });
  };
}

/** Returns the same for a change in grains. */
export function useWriteChange(test: TestCode, lengths: LengthUnit): (change: number) => string {
  const writeValue = useWriteValue(test, lengths);
  const changeText = useChangeText();
  return (change) => changeText(test, change, writeValue(Math.abs(change)));
}
