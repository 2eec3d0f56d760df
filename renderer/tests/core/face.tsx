import { timeText } from "../../../electron/domain/tests/time-text.ts";
import type { TestFace } from "../face.ts";
import { Drawing } from "./Drawing.tsx";
import { example, lines, numbers } from "./rules.ts";
import { Steps } from "./Steps.tsx";
import { coreTool } from "./tool.tsx";

/** The windows' part of the staged plank. */
export const coreFace: TestFace<"core"> = {
  live: coreTool,
  drawing: { layout: "strip", Drawing },
  Steps,
  numbers,
  // Only one staging exists, so nothing can be changed (core/protocol.ts).
  settings: () => [],
  withSettings: (parameters) => parameters,
  summary: (t, { cycle }) => t("summary", { cycle }),
  seen: (t, { held }) => t("seen.held", { time: timeText(held) }),
  asks: (t, parameters) => t("asks", numbers(parameters)),
  lines,
  example,
};
