import { useTranslation } from "react-i18next";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { protocols } from "../../electron/domain/tests/registry.ts";

/** How a test is held, in one line. */
export function useRulesLine(): (test: TestCode, parameters: unknown) => string {
  const { t } = useTranslation("day");
  return (test, parameters) => {
    switch (test) {
      case "push-up": {
        const { bpm, beatsPerRep, missesToStop } = protocols[test].parameters.parse(parameters);
        const seconds = Math.round((60_000 / bpm) * beatsPerRep) / 1000;
        return t("rules.summary.push-up", { bpm, seconds, missesToStop });
      }
      case "agility": {
        const { seconds, crossSize, touchPenalty } = protocols[test].parameters.parse(parameters);
        return t("rules.summary.agility", { seconds, cross: crossSize / 10, touchPenalty });
      }
      case "vertical":
        return t("rules.summary.vertical", { count: protocols[test].parameters.parse(parameters).trials });
      case "core":
        return t("rules.summary.core", { cycle: protocols[test].parameters.parse(parameters).cycle });
      case "endurance": {
        const { rounds, exercises } = protocols[test].parameters.parse(parameters);
        const parts = exercises.map(({ exercise, count }) => t(`rules.part.${exercise}`, { count }));
        return t("rules.summary.endurance", { count: rounds, parts: parts.join(", ") });
      }
    }
  };
}
