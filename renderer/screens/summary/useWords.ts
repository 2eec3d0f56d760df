import { useTranslation } from "react-i18next";
import type { LengthUnit, TestCode } from "../../../electron/domain/protocols/protocol.ts";
import { protocolOf } from "../../../electron/domain/protocols/registry.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { sentence } from "../../../electron/domain/words.ts";
import { useSay } from "../../app/say.ts";
import type { Gap, Spread, Summary } from "./summary.ts";

/** A value in grains with its unit: "24 reps", "42 cm", "6:06.8". Middles between grains get two decimals at most. */
export function useWrite(lengths: LengthUnit): (test: TestCode, value: number) => string {
  const { t } = useTranslation("common");
  return (test, value) => {
    const { write, grain } = protocolOf(test);
    const whole = grain.unit === "s" || Number.isInteger(value) ? Math.round(value) : null;
    const { number, unit } = write(whole ?? value, lengths);
    const short = whole === null ? String(Math.round(Number(number) * 100) / 100) : number;
    return unit === "" || unit === "min:s" ? number : `${short} ${t(`unit.${unit}`)}`;
  };
}

/** A change in grains, above zero for the better, in words that leave no doubt which way is good. */
export function useWriteChange(lengths: LengthUnit): (test: TestCode, change: number) => string {
  const { t } = useTranslation(["summary", "station"]);
  const write = useWrite(lengths);
  return (test, change) => {
    if (change === 0) return t("everybody.same");
    const number = write(test, Math.abs(change));
    if (test === "endurance")
      return t(change > 0 ? "station:change.faster" : "station:change.slower", { number });
    if (test === "core")
      return t(change > 0 ? "station:change.longer" : "station:change.shorter", { number });
    return t("station:change.plain", { sign: change > 0 ? "+" : "−", number });
  };
}

/** Why a mark is missing, in a sentence. */
export function useBecause(): (gap: Gap) => string {
  const { t } = useTranslation("summary");
  const say = useSay();
  return ({ kind, reason, mark }) => {
    if (mark?.state === "unfinished")
      return t("because.not-finished", { rounds: mark.rounds, reps: mark.reps });
    if (mark?.state === "incomplete") {
      return t("because.half-done", { left: say(sentence(`marks.missing.${mark.missing.join("-")}`)) });
    }
    return t(`because.${kind}`, { reason });
  };
}

/** Milliseconds as minutes and seconds. */
export function writeMs(ms: number): string {
  return formatTime(ms, false);
}

/** The two ends of a set of values. */
export function useRange(): (spread: Spread, write: (value: number) => string) => string {
  const { t } = useTranslation("summary");
  return ({ lowest, highest }, write) =>
    lowest === highest ? write(lowest) : t("stations.range", { low: write(lowest), high: write(highest) });
}

/** How a test was done, where there are two ways. */
export function useVariant(): (variant: string) => string {
  const { t } = useTranslation("summary");
  return (variant) => (variant === "full" || variant === "knee" ? t(`everybody.${variant}`) : "");
}

/** Whose initials are with a mark. */
export function useJudge(): (judge: Summary["judges"][number]["judge"]) => string {
  const { t } = useTranslation("summary");
  return (judge) => (judge.kind === "named" ? judge.name : t(`judges.${judge.kind}`));
}
