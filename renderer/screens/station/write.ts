import { useTranslation } from "react-i18next";
import { retype } from "../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocolOf, protocols } from "../../../electron/domain/tests/registry.ts";
import { formatLength } from "../../../electron/domain/units.ts";

/** A value in grains as a short text with its unit where it needs one: "24 reps", "43 cm", "3:21". */
export function useWriteValue(test: TestCode, lengths: LengthUnit): (value: number) => string {
  const { t } = useTranslation("common");
  return (value) => {
    const { number, unit } = protocolOf(test).write(value, lengths);
    return unit === "" || unit === "min:s" ? number : `${number} ${t(`unit.${unit}`)}`;
  };
}

/** A change in grains (positive is better) in words that leave no doubt which way is good: "+3 reps", "0:12 longer". */
export function useWriteChange(test: TestCode, lengths: LengthUnit): (change: number) => string {
  const { t } = useTranslation("station");
  const writeValue = useWriteValue(test, lengths);
  return (change) => {
    const number = writeValue(Math.abs(change));
    if (test === "endurance") return t(change > 0 ? "change.faster" : "change.slower", { number });
    if (test === "core") return t(change > 0 ? "change.longer" : "change.shorter", { number });
    return t("change.plain", { sign: change > 0 ? "+" : "−", number });
  };
}

/** What was seen in an attempt, in one line. */
export function useWriteSeen(): (test: TestCode, seen: unknown, lengths: LengthUnit) => string {
  const { t } = useTranslation(["station", "common"]);
  return (test, seen, lengths) => {
    switch (test) {
      case "push-up": {
        const tried = protocols["push-up"].attempt.parse(seen);
        return tried.how === "tally"
          ? t("seen.tally", { reps: tried.reps, off: tried.offAtEnd })
          : t("seen.cadences", { count: tried.cadences.length });
      }
      case "agility": {
        const { direction, ...rest } = protocols.agility.attempt.parse(seen);
        return t("seen.jump", { direction: t(`choice.direction.${direction}`), ...rest });
      }
      case "vertical": {
        const { standingReach, touchReach } = protocols.vertical.attempt.parse(seen);
        const [reach, touch] = [formatLength(standingReach, lengths), formatLength(touchReach, lengths)];
        return t("seen.leap", { reach, touch, unit: t(`common:unit.${lengths}`) });
      }
      case "core":
        return t("seen.held", { time: retype(test, seen, lengths).typed.time });
      case "endurance": {
        const run = protocols.endurance.attempt.parse(seen);
        return run.finished
          ? t("seen.finished", { time: retype(test, seen, lengths).typed.time })
          : t("seen.stopped", { rounds: run.roundsDone, reps: run.repsDone });
      }
    }
  };
}
