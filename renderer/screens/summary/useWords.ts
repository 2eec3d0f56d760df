import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";
import { missingOf } from "../../../electron/domain/tests/written.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { useChangeText } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import type { Gap, Summary } from "./summary.ts";

/** Formats a value in grains without its unit: "24", "42.5", "6:06.8"; medians with two decimals at most. */
export function writeNumber(test: TestCode, value: number, lengths: LengthUnit): string {
  const { write, grain } = protocolOf(test);
  if (grain.unit === "s" || Number.isInteger(value)) return write(Math.round(value), lengths).number;
  return String(Math.round(Number(write(value, lengths).number) * 100) / 100);
}

/** Returns the unit that a test's marks are written in. */
export function useUnit(lengths: LengthUnit): (test: TestCode) => string {
  const { t } = useTranslation(["summary", "common"]);
  return (test) => {
    const { unit } = protocolOf(test).write(0, lengths);
    if (unit === "min:s") return t("everybody.minutes");
    return unit === "" ? "" : t(`common:unit.${unit}`);
  };
}

/** Formats a value with its unit where it needs one: "24 reps", "42 cm", "6:06.8". */
export function useWrite(lengths: LengthUnit): (test: TestCode, value: number) => string {
  const unitOf = useUnit(lengths);
  const show = useShowNumber();
  return (test, value) => {
    const number = show(writeNumber(test, value, lengths));
    return protocolOf(test).grain.unit === "s" ? number : `${number} ${unitOf(test)}`;
  };
}

/** Formats a range with the unit once: "17 to 30 reps". */
export function useFromTo(lengths: LengthUnit): (test: TestCode, low: number, high: number) => string {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  return (test, low, high) =>
    low === high
      ? write(test, low)
      : t("judges.range", { low: writeNumber(test, low, lengths), high: write(test, high) });
}

/** Formats a change in grains (positive is better) in words that leave no doubt which way is good. */
export function useWriteChange(lengths: LengthUnit): (test: TestCode, change: number) => string {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  const changeText = useChangeText();
  return (test, change) =>
    change === 0 ? t("everybody.same") : changeText(test, change, write(test, Math.abs(change)));
}

/** Formats a change without its unit, for a column whose head has it: "+3", "0:12 longer". */
export function useShortChange(lengths: LengthUnit): (test: TestCode, change: number) => string {
  const { t } = useTranslation("summary");
  const changeText = useChangeText();
  return (test, change) =>
    change === 0
      ? t("everybody.same")
      : changeText(test, change, writeNumber(test, Math.abs(change), lengths));
}

/** Formats in a sentence why a mark is missing. */
export function useBecause(): (gap: Gap & { readonly tests: readonly TestCode[] }) => string {
  const { t } = useTranslation("summary");
  const say = useSay();
  return ({ kind, reason, mark, tests: [test] }) => {
    if (mark?.state === "unfinished")
      return t("because.not-finished", { rounds: mark.rounds, reps: mark.reps });
    if (mark?.state === "incomplete" && test !== undefined) {
      return t("because.half-done", { left: say(missingOf(test, mark.missing)) });
    }
    return t(`because.${kind}`, { reason });
  };
}

/** Formats milliseconds as minutes and seconds. */
export function writeMs(ms: number): string {
  return formatTime(ms, false);
}

/** Names the variant of a test that has two. */
export function useVariant(): (variant: string) => string {
  const { t } = useTranslation("summary");
  return (variant) => (variant === "full" || variant === "knee" ? t(`everybody.${variant}`) : "");
}

/** Names the judge of a mark. */
export function useJudge(): (judge: Summary["judges"][number]["judge"]) => string {
  const { t } = useTranslation("summary");
  return (judge) => (judge.kind === "named" ? judge.name : t(`judges.${judge.kind}`));
}
