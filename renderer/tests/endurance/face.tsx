import { timeText } from "../../../electron/domain/tests/time-text.ts";
import type { TestFace } from "../face.ts";
import { Round } from "./Round.tsx";
import { asks, example, lines, settings, summary, withSettings } from "./rules.ts";
import { Steps } from "./Steps.tsx";
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
