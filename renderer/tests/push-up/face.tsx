import type { TestFace } from "../face.ts";
import { changed } from "../settings.ts";
import { PushUpForm } from "./Form.tsx";
import { example, lines, numbers, settings, summary } from "./rules.ts";
import { pushUpTool } from "./tool.tsx";

/** The windows' part of the cadence push-up. */
export const pushUpFace: TestFace<"push-up"> = {
  live: pushUpTool,
  drawing: { layout: "picture", Drawing: PushUpForm },
  numbers,
  settings,
  withSettings: changed,
  summary,
  seen: (t, seen) =>
    seen.how === "tally"
      ? t("seen.tally", { reps: seen.reps, off: seen.offAtEnd })
      : t("seen.cadences", { count: seen.cadences.length }),
  asks: (t, parameters) => t("asks", numbers(parameters)),
  lines,
  example,
};
