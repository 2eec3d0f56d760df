import { useTranslation } from "react-i18next";
import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";
import { timeText } from "../../../electron/domain/tests/time-text.ts";
import type { TestFace } from "../face.ts";
import css from "../Steps.module.css";
import { Round } from "./Round.tsx";
import { asks, example, lines, settings, summary, withSettings } from "./rules.ts";
import { enduranceTool } from "./tool.tsx";

/** The windows' part of the circuit. */
export const enduranceFace: TestFace<"endurance"> = {
  live: enduranceTool,
  drawing: { layout: "large-strip", Drawing: Round },
  Steps,
  numbers: ({ rounds }) => ({ rounds }),
  settings,
  withSettings,
  summary,
  seen: (t, seen) =>
    seen.finished
      ? t("seen.finished", { time: timeText(seen.time) })
      : t("seen.stopped", { rounds: seen.roundsDone, reps: seen.repsDone }),
  asks,
  lines,
  example,
};

/** Lists the exercises of a round, one per line. */
function Steps({ parameters: { exercises } }: { readonly parameters: EnduranceParameters }) {
  const { t } = useTranslation("endurance");
  return (
    <ol className={css.steps}>
      {exercises.map(({ exercise, count }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
        <li key={index}>{t(`counted.${exercise}`, { count })}</li>
      ))}
    </ol>
  );
}
